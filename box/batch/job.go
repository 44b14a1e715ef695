package batch

import (
	"context"

	"holt.example/box"
	"holt.example/box/layout"
)

// Order is a number of equal boxes.
type Order struct {
	Plan  *box.Plan // required
	Count int       // how many; 0 is 1

	// Priority decides which boxes get the stock when there is not enough:
	// higher goes first.
	Priority int
}

// Job says which boxes are wanted, what there is to cut them from, and how
// hard to look for a layout.
type Job struct {
	Name   string // for titles and folders; "" is good
	Orders []Order

	// Stock is what can be bought and what lies in the shed. A part goes to
	// stock whose measured thickness is that of the part within
	// layout.ThicknessMatch, and of its board's material; an empty material or
	// a thickness of 0 fits any. Its grain lies along the stock's.
	Stock []layout.Stock

	// By is the way of cutting: Router, Saw or Lengths. Required.
	By Way

	// Allowance is kept all round each part, mm: an oversize blank; 0 or more.
	Allowance box.MM

	// Rough says that the stock has one rough face, and where in the box that
	// goes. No part may be turned over then, and all lie with the smooth face up.
	Rough Face

	Seed    uint64 // of the random choices; any is good
	Effort  int    // iterations for each group of parts; 0 is a default, negative takes the first layout
	Streams int    // searches side by side, 0 is 1; see layout.Job
}

// Face is a side of the boards.
type Face int

// The faces of a board.
const (
	NoFace    Face = iota
	OuterFace      // the one away from the cavity
	InnerFace
)

// Way is the way of cutting.
type Way interface {
	lay(context.Context, layout.Job) (layout.Layout, error)
	word() string
}

// Router cuts outlines of any form anywhere on a sheet. Small parts may lie in
// large openings of others. Its fields are those of layout.FreeRules.
type Router layout.FreeRules

// Saw cuts sheets and wide boards straight from edge to edge. Its fields are
// those of layout.SawRules.
type Saw layout.SawRules

// Lengths cuts boards of a given width to length. Its fields are those of
// layout.LengthRules.
type Lengths layout.LengthRules

func (r Router) lay(ctx context.Context, j layout.Job) (layout.Layout, error) {
	return layout.Free(ctx, j, layout.FreeRules(r))
}

func (r Saw) lay(ctx context.Context, j layout.Job) (layout.Layout, error) {
	return layout.Saw(ctx, j, layout.SawRules(r))
}

func (r Lengths) lay(ctx context.Context, j layout.Job) (layout.Layout, error) {
	return layout.Lengths(ctx, j, layout.LengthRules(r))
}

func (Router) word() string  { return "router" }
func (Saw) word() string     { return "saw" }
func (Lengths) word() string { return "lengths" }

// Problem is something that cannot be done; its fields and codes are those of
// package layout. Paths begin in the Job: "Orders[1].Plan", "Stock[0].Length",
// and "Orders[0].Plan.Piece(roof/left)" for a part that cannot be placed.
type Problem = layout.Problem

// Problems is every problem of a job: first those of the job itself, then those of
// the parts, by groups that share stock.
type Problems = layout.Problems

// The code of problems that only a batch can have, beside those of layout.
const (
	CodeNoPlan = "no-plan" // an order without a plan, or a plan without parts
	CodeNoWay  = "no-way"  // Job.By is nil
)
