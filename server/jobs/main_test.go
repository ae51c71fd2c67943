package jobs_test

import (
	"testing"

	"pitgate/server/postgres/pgtest"
)

func TestMain(m *testing.M) { pgtest.Main(m) }
