/**
 * Who may come in when the notebook is reached from elsewhere, and what they may do there.
 *
 * <p><b>What.</b> Players and their passphrases, kept as Argon2id hashes; invitations; sessions; slowing down whoever
 * guesses; notebooks, and which player may read, write or own each.
 *
 * <p><b>Conventions.</b> On the loopback address nobody has to sign in: whoever sits at the computer owns every notebook.
 * Argon2id with 19 MiB, 2 passes, 1 lane (OWASP Password Storage Cheat Sheet, 2026). A token carries 128 bits; only its
 * SHA-256 is stored. A notebook one may not read is answered like one that does not exist.
 *
 * <p><b>Left out.</b> Which right an address needs: that stands in {@code rosinbook.web.Rights}.
 */
package rosinbook.access;
