// Package shelf is a folder of jobs: what each is and how far it has come, and what the records of
// finished windings say of the winder's hand.
//
// It reads files and changes none. What it learns it offers together with the number of jobs behind it;
// it puts nothing into a job.
package shelf
