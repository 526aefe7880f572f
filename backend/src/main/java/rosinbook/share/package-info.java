/**
 * Read-only links to exactly what they name.
 *
 * <p><b>What.</b> Tokens, the shares a player has made, what a share shows, and the same as one self-contained file.
 *
 * <p><b>Conventions.</b> A token carries 128 bits from a secure random source (OWASP ASVS 5.0, 11.5.1) as 22 characters
 * of base64url; only its SHA-256 is stored, so a copy of the database opens nothing. A share reads the notebook through
 * {@link rosinbook.share.SharedPages}, which knows the shared sheets and no others.
 *
 * <p><b>Left out.</b> Writing through a share.
 */
package rosinbook.share;
