// Package fluid gives the properties of water, ethanol-water, wort and mash
// that the stages of a plan are built on, and the arithmetic of US gauging.
package fluid
