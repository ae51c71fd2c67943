package main

// Variables of the function that unpacks.
const (
	tokenLocal local = iota
	valueLocal
	shiftLocal
	readLocal
	tokensLocal
	changesLocal
	freshLocal
	lastLocal
	fieldLocal
	atLocal
	indexLocal
	locals
)

// unpacking is the body of a function that writes the table of functions that packed took away. Without parameters and results.
func (l layout) unpacking() []byte {
	c := code{1, byte(locals), wordType}
	c.assign(tokensLocal, l.tokens)
	c.assign(changesLocal, l.changes)
	c.assign(fieldLocal, 4)
	c.loop(func() {
		l.column(&c)
		c.advance(fieldLocal, 4)
		c.below(fieldLocal, rowBytes)
	})
	l.begins(&c)
	l.find(&c)
	c.op(end)
	return c
}

// column writes one word of every row.
func (l layout) column(c *code) {
	rows := l.starts + l.offset
	c.assign(freshLocal, l.scratch)
	c.assign(lastLocal, 0)
	c.assign(atLocal, rows)
	c.loop(func() {
		c.uvarint(tokensLocal)
		c.set(tokenLocal)
		c.get(tokenLocal)
		c.op(opZero, opIf, noValue)
		c.change()
		c.op(opElse)
		c.get(tokenLocal)
		c.number(4)
		c.op(opMultiply)
		c.load(l.scratch - 4)
		c.set(valueLocal)
		c.op(end)
		c.get(atLocal)
		c.get(fieldLocal)
		c.op(opAdd)
		c.get(valueLocal)
		c.store(0)
		c.advance(atLocal, rowBytes)
		c.below(atLocal, rows+rowBytes*l.count)
	})
}

// change reads a new value, the unfolded change from the last one, and remembers it.
func (c *code) change() {
	c.uvarint(changesLocal)
	c.set(valueLocal)
	c.get(valueLocal)
	c.number(1)
	c.op(opRight)
	c.number(0)
	c.get(valueLocal)
	c.number(1)
	c.op(opAnd, opSubtract, opXor)
	c.get(lastLocal)
	c.op(opAdd)
	c.set(valueLocal)
	c.get(valueLocal)
	c.set(lastLocal)
	c.get(freshLocal)
	c.get(valueLocal)
	c.store(0)
	c.advance(freshLocal, 4)
}

// uvarint leaves the number that stands where a variable points and moves it on.
func (c *code) uvarint(from local) {
	c.assign(valueLocal, 0)
	c.assign(shiftLocal, 0)
	c.loop(func() {
		c.get(from)
		c.op(opLoadByte, 0, 0)
		c.set(readLocal)
		c.get(valueLocal)
		c.get(readLocal)
		c.number(0x7f)
		c.op(opAnd)
		c.get(shiftLocal)
		c.op(opLeft, opOr)
		c.set(valueLocal)
		c.advance(shiftLocal, 7)
		c.advance(from, 1)
		c.get(readLocal)
		c.number(0x80)
		c.op(opAnd)
	})
	c.get(valueLocal)
}

// begins writes where each function begins and the number in its row.
func (l layout) begins(c *code) {
	c.assign(indexLocal, 0)
	c.loop(func() {
		for _, place := range []struct{ stride, from, offset, step int }{{8, 0, l.first, 1}, {8, 4, l.offset, rowBytes}, {rowBytes, l.offset, l.first, 1}} {
			c.get(indexLocal)
			c.number(place.stride)
			c.op(opMultiply)
			c.get(indexLocal)
			c.number(place.step)
			c.op(opMultiply)
			c.number(place.offset)
			c.op(opAdd)
			c.store(l.starts + place.from)
		}
		c.advance(indexLocal, 1)
		c.below(indexLocal, l.count)
	})
}

// find writes the table by which functions are found, over what was read.
func (l layout) find(c *code) {
	c.assign(indexLocal, 0)
	c.assign(atLocal, l.finder)
	c.loop(func() {
		c.get(atLocal)
		c.get(indexLocal)
		c.number(bucketsOfOne)
		c.op(opDivide)
		c.store(0)
		for part := 4; part < bucketBytes; part += 4 {
			c.get(atLocal)
			c.number(0)
			c.store(part)
		}
		c.advance(indexLocal, 1)
		c.advance(atLocal, bucketBytes)
		c.below(atLocal, l.finderEnd())
	})
}
