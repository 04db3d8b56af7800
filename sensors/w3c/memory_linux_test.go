package w3c

import (
	"testing"

	"stillair/sensors/internal/memtest"
)

func TestMalformedMemory(t *testing.T) { memtest.AtMost(t, "TestMalformed", 200) }
