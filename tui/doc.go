// Package tui is the screen of the workbench: it shows a job and its outcome and takes keys. It
// computes nothing of the trade; every figure comes from the winding package.
//
// The root, [Model], only routes: a key goes to the question on the screen if there is one, else to the
// view that is shown, else to the keys that work everywhere. Each view is a folder. What they share is
// in session, what they draw with in kit, form and chart, what must outlive the program in recovery.
package tui
