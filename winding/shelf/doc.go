// Package shelf is a folder of jobs: what each is and how far it has come, and what the
// records of what was wound say of the hand that wound it.
//
// It reads files and changes none. What it learns it offers with the number of jobs that
// it is from; nothing is put into a job by it.
package shelf
