package main

import "encoding/binary"

// Instructions of WebAssembly that the unpacking needs.
//
// Source: WebAssembly Core Specification, section 5.4.
const (
	opLoop     = 0x03
	opIf       = 0x04
	opElse     = 0x05
	opBranchIf = 0x0d
	opGet      = 0x20
	opSet      = 0x21
	opLoad     = 0x28
	opLoadByte = 0x2d
	opStore    = 0x36
	opZero     = 0x45
	opBelow    = 0x49 // unsigned
	opAdd      = 0x6a
	opSubtract = 0x6b
	opMultiply = 0x6c
	opDivide   = 0x6e // unsigned
	opAnd      = 0x71
	opOr       = 0x72
	opXor      = 0x73
	opLeft     = 0x74
	opRight    = 0x76 // without sign
	noValue    = 0x40
	wordType   = 0x7f // i32
)

// local is a variable of the function.
type local byte

// code is a function's body in the making. Values are left on the stack by get and number, and taken by what follows.
type code []byte

func (c *code) op(ops ...byte) { *c = append(*c, ops...) }

func (c *code) number(n int) { *c = appendSigned(append(*c, constant), n) }

func (c *code) get(from local) { c.op(opGet, byte(from)) }

func (c *code) set(to local) { c.op(opSet, byte(to)) }

// assign sets a variable to a number.
func (c *code) assign(to local, n int) {
	c.number(n)
	c.set(to)
}

// advance adds a number to a variable.
func (c *code) advance(to local, by int) {
	c.get(to)
	c.number(by)
	c.op(opAdd)
	c.set(to)
}

// load and store move a word; the address lies on the stack, for a store below the value.
func (c *code) load(offset int)  { *c = binary.AppendUvarint(append(*c, opLoad, 0), uint64(offset)) }
func (c *code) store(offset int) { *c = binary.AppendUvarint(append(*c, opStore, 0), uint64(offset)) }

// loop repeats what body writes while it leaves something other than zero.
func (c *code) loop(body func()) {
	c.op(opLoop, noValue)
	body()
	c.op(opBranchIf, 0, end)
}

// below leaves whether a variable is below a number.
func (c *code) below(of local, n int) {
	c.get(of)
	c.number(n)
	c.op(opBelow)
}
