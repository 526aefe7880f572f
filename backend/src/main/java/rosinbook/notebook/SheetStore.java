package rosinbook.notebook;

import java.util.function.Function;

/** Where sheets are kept. */
public interface SheetStore {
    /**
     * Changes, all or none of them. When this returns, they are on the disk.
     *
     * @throws RuntimeException whatever {@code work} throws, after everything it did was undone
     */
    <T> T change(Function<Pages, T> work);

    /** Reads, from one consistent state. */
    <T> T look(Function<Pages, T> work);
}
