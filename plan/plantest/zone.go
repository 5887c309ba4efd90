package plantest

import "time"

// Files that name no zone are in the machine's; tests read them as universal time
// wherever they run.
func init() { time.Local = time.UTC }
