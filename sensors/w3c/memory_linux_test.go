package w3c

import (
	"testing"

	"stillair/sensors/internal/memtest"
)

func TestHostileMemory(t *testing.T) { memtest.AtMost(t, "TestHostile", 200) }
