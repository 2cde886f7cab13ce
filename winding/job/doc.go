// Package job is the edge between a job file and a [Job]: it reads, checks, edits and saves.
//
// A [Document] is the text of the file and its meaning. The text is the one thing kept: every edit is
// made in it, where the value is, so comments, order and the way a number was typed (18 AWG stays 18
// AWG, 0.50 stays 0.50) survive without special effort, and a wrong value stays in the file, with its
// problem beside it, until the person corrects it. Undo is the previous document.
//
// What a file may contain is one table, [Tables] and its inputs, from which the template of a new file,
// the form on the screen and the list of inputs on the card are made too.
//
// The package computes nothing of the trade and asks nobody anything.
package job
