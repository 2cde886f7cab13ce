// Package job is the edge between a job file and a [Job]: it reads, checks,
// edits and saves.
//
// A [Document] is the text of the file and what it says. The text is the one thing
// kept: every edit is made in it, where the value stands, so comments, order and
// the way a number was typed (18 AWG stays 18 AWG, 0.50 stays 0.50) survive without
// a special effort, and a value that is not right stays in the file, with its
// problem beside it, until the person mends it. Undo is the document before.
//
// What may stand in a file is one table, [Tables] and its inputs, from which also the template of
// a new file, the form on the screen and the list of inputs on the card are made.
//
// The package computes nothing of the trade and asks nobody anything.
package job
