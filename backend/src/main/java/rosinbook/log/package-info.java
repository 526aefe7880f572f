/** What the program says of itself while it runs: how it looks, and that no player's words and no secrets are in it. */
package rosinbook.log;
