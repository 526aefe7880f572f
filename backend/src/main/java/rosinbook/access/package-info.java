/**
 * Who may come in when the notebook is reached from elsewhere.
 *
 * <p><b>What.</b> The owner's passphrase, kept as an Argon2id hash; sessions; and slowing down whoever guesses.
 *
 * <p><b>Conventions.</b> On the loopback address nobody has to sign in. Argon2id with 19 MiB, 2 passes, 1 lane (OWASP
 * Password Storage Cheat Sheet, 2026). A session token carries 128 bits; only its SHA-256 is stored.
 *
 * <p><b>Left out.</b> Several people with accounts and rights of their own.
 */
package rosinbook.access;
