// Package homeview makes the screen Home.
package homeview
