package serve

import (
	"os/exec"
	"runtime"
)

// Browse asks the desktop to show an address. Where there is none, the address
// has been said.
func Browse(url string) {
	name, args := "xdg-open", []string{url}
	switch runtime.GOOS {
	case "darwin":
		name = "open"
	case "windows":
		name, args = "rundll32", []string{"url.dll,FileProtocolHandler", url}
	}
	if cmd := exec.Command(name, args...); cmd.Start() == nil {
		go cmd.Wait()
	}
}
