package rosinbook.take;

import java.util.Arrays;

/** The greatest number of pairs, each partner used once. Source: Hopcroft and Karp, SIAM J. Comput. 2(4), 1973. */
final class Matching {
    private static final int FREE = -1;
    private final int[][] edges;
    private final int[] partnerOfLeft;
    private final int[] partnerOfRight;
    private final int[] layer;
    private final int[] tried;
    private int size;

    /** @param edges for each on the left, whom on the right it may be paired with */
    Matching(int[][] edges, int right) {
        this.edges = edges;
        partnerOfLeft = new int[edges.length];
        partnerOfRight = new int[right];
        layer = new int[edges.length];
        tried = new int[edges.length];
        Arrays.fill(partnerOfLeft, FREE);
        Arrays.fill(partnerOfRight, FREE);
        while (layered()) {
            Arrays.fill(tried, 0);
            for (int left = 0; left < edges.length; left++) {
                if (partnerOfLeft[left] == FREE && augment(left)) {
                    size++;
                }
            }
        }
    }

    int size() {
        return size;
    }

    private boolean layered() {
        int[] queue = new int[edges.length];
        int head = 0;
        int tail = 0;
        for (int left = 0; left < edges.length; left++) {
            layer[left] = partnerOfLeft[left] == FREE ? 0 : FREE;
            if (layer[left] == 0) {
                queue[tail++] = left;
            }
        }
        boolean reached = false;
        while (head < tail) {
            int left = queue[head++];
            for (int right : edges[left]) {
                int next = partnerOfRight[right];
                if (next == FREE) {
                    reached = true;
                } else if (layer[next] == FREE) {
                    layer[next] = layer[left] + 1;
                    queue[tail++] = next;
                }
            }
        }
        return reached;
    }

    /** Follows one path through the layers, without recursion, since a path may be as long as the take. */
    private boolean augment(int start) {
        int[] path = new int[16];
        int depth = 0;
        path[0] = start;
        while (depth >= 0) {
            int left = path[depth];
            if (tried[left] == edges[left].length) {
                depth--;
                continue;
            }
            int right = edges[left][tried[left]++];
            int next = partnerOfRight[right];
            if (next == FREE) {
                for (int step = depth; step >= 0; step--) {
                    int freed = partnerOfLeft[path[step]];
                    pair(path[step], right);
                    right = freed;
                }
                return true;
            }
            if (layer[next] == layer[left] + 1) {
                depth++;
                path = depth == path.length ? Arrays.copyOf(path, depth * 2) : path;
                path[depth] = next;
            }
        }
        return false;
    }

    private void pair(int left, int right) {
        partnerOfLeft[left] = right;
        partnerOfRight[right] = left;
    }
}
