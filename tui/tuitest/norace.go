//go:build !race

package tuitest

const detecting = false
