package rosinbook.circuit;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Points joined by wires, numbered from 0: two points of one net are the same electrically. */
final class Nets {
    private final Map<String, Integer> indexes = new HashMap<>();
    private final List<Integer> parents = new ArrayList<>();
    private int[] numbers;
    private int size;

    /** @param points all points there are; ends of pieces are added */
    Nets(Iterable<String> points, List<Piece> pieces) {
        points.forEach(this::indexOf);
        for (Piece piece : pieces) {
            int from = root(indexOf(piece.from()));
            int to = root(indexOf(piece.to()));
            if (piece.isWire()) {
                parents.set(from, to);
            }
        }
        number();
    }

    int size() {
        return size;
    }

    /** The net of a point, or -1 for a point nobody knows. */
    int of(String point) {
        Integer index = indexes.get(point);
        return index == null ? -1 : numbers[index];
    }

    private void number() {
        numbers = new int[parents.size()];
        Map<Integer, Integer> byRoot = new HashMap<>();
        for (int i = 0; i < numbers.length; i++) {
            numbers[i] = byRoot.computeIfAbsent(root(i), unseen -> byRoot.size());
        }
        size = byRoot.size();
    }

    private int indexOf(String point) {
        return indexes.computeIfAbsent(point, unseen -> {
            parents.add(parents.size());
            return parents.size() - 1;
        });
    }

    private int root(int index) {
        int root = index;
        while (parents.get(root) != root) {
            root = parents.get(root);
        }
        parents.set(index, root);
        return root;
    }
}
