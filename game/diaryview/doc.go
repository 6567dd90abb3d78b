// Package diaryview makes the screens of the practice diary, its pictures and what it says
// first, and those of a practice.
package diaryview
