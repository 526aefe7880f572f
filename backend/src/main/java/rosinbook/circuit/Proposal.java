package rosinbook.circuit;

import java.util.List;

/**
 * A first adapter to start from.
 *
 * @param adapter every route can be changed by hand
 * @param remarks what could not be served and what was assumed, one sentence each
 */
public record Proposal(Adapter adapter, List<String> remarks) {
    /** Copies the list. */
    public Proposal {
        remarks = List.copyOf(remarks);
    }
}
