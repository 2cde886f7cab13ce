package job

import _ "embed"

//go:embed example.toml
var exampleText string

// Example is the built-in job: an invented scenario that says so.
func Example() Document { return Parse(exampleText) }
