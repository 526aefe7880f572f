/**
 * Changes between two JSON contents, and saves that crossed.
 *
 * <p><b>What.</b> The list of changes between two JSON trees, the same as a JSON Patch (RFC 6902), JSON Merge Patch (RFC
 * 7396), three-way merging, and which entries of an ordered list moved.
 *
 * <p><b>Conventions.</b> Places are JSON Pointers (RFC 6901). Objects are compared member by member; everything else,
 * arrays included, as a whole. A change without {@code was} was added, one without {@code now} was left out.
 *
 * <p><b>Left out.</b> What the trees mean: this package knows no sheets. {@code rosinbook.readout} puts changes into a
 * player's words.
 *
 * <p><b>Differences from the usual method.</b> 1. Arrays are atoms: contents keep whatever has an identity in objects, so
 * an element-by-element array comparison would find nothing that matters.
 */
package rosinbook.compare;
