package layout

import "context"

func free(context.Context, Job, FreeRules) (Layout, error) { return Layout{}, nil }
func saw(context.Context, Job, SawRules) (Layout, error)   { return Layout{}, nil }
func fill(context.Context, Job, SawRules) (Layout, error)  { return Layout{}, nil }
