package evenrise.solver.drawing;

import evenrise.solver.document.Diagram;
import evenrise.solver.document.Diagram.Block;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Cuts a drawing into sheets. A block stands with as much of what it feeds as there is room for; what does not fit behind
 * it on one sheet stands there as a reference, and on a sheet of its own. A block that feeds more than a row holds goes on
 * upon the next sheet.
 */
public final class Sheets {
    private final Map<String, List<Block>> fed = new HashMap<>();
    private final Deque<Block> waiting = new ArrayDeque<>();
    private final List<PlacedBlock> roots = new ArrayList<>();

    private Sheets(Diagram diagram) {
        diagram.blocks()
                .forEach(block -> fed.computeIfAbsent(block.parent().orElse(""), any -> new ArrayList<>())
                        .add(block));
    }

    public static List<Sheet> of(Diagram diagram) {
        Sheets sheets = new Sheets(diagram);
        sheets.cut();
        List<Sheet> drawn = new ArrayList<>();
        Map<String, Integer> firstSheets = sheets.firstSheets();
        Map<String, Integer> references = sheets.references();
        for (int i = 0; i < sheets.roots.size(); i++) {
            drawn.add(new SheetDrawing(i + 1, sheets.roots.get(i), firstSheets, references).drawn());
        }
        return drawn;
    }

    /** First what fills sheets by itself, then all that is small, side by side. */
    private void cut() {
        List<PlacedBlock> small = new ArrayList<>();
        for (Block block : behind(null)) {
            PlacedBlock item = whole(block);
            if (fitsBehind(null, item)) {
                small.add(item);
            } else {
                waiting.add(block);
            }
        }
        while (!waiting.isEmpty()) {
            Block block = waiting.poll();
            List<PlacedBlock> items = new ArrayList<>();
            for (Block child : behind(block)) {
                PlacedBlock item = whole(child);
                if (item.fed().isEmpty() || fitsBehind(block, item)) {
                    items.add(item);
                } else {
                    items.add(PlacedBlock.reference(child));
                    waiting.add(child);
                }
            }
            fill(block, items);
        }
        fill(null, small);
    }

    /** @param block null for none */
    private List<Block> behind(Block block) {
        return fed.getOrDefault(block == null ? "" : block.id(), List.of());
    }

    /** As many to a sheet as there is room for. */
    private void fill(Block block, List<PlacedBlock> items) {
        PlacedBlock root = begun(block);
        for (PlacedBlock item : items) {
            root.add(item);
            if (root.fed().size() > 1 && !new TreeOnSheet(root).fits()) {
                root.removeLast();
                roots.add(root);
                root = begun(block);
                root.add(item);
            }
        }
        if (!root.isNothing() || !root.fed().isEmpty()) {
            roots.add(root);
        }
    }

    private static PlacedBlock begun(Block block) {
        return block == null ? PlacedBlock.nothing() : PlacedBlock.beginning(block);
    }

    private static boolean fitsBehind(Block block, PlacedBlock item) {
        PlacedBlock root = begun(block);
        root.add(item);
        return new TreeOnSheet(root).fits();
    }

    private PlacedBlock whole(Block block) {
        PlacedBlock item = PlacedBlock.of(block);
        behind(block).forEach(child -> item.add(whole(child)));
        return item;
    }

    /** The sheet that a block begins first, counted from 1. */
    private Map<String, Integer> firstSheets() {
        Map<String, Integer> first = new HashMap<>();
        for (int i = 0; i < roots.size(); i++) {
            if (!roots.get(i).isNothing()) {
                first.putIfAbsent(roots.get(i).block().id(), i + 1);
            }
        }
        return first;
    }

    /** Sheets on which references stand, by what they refer to. */
    private Map<String, Integer> references() {
        Map<String, Integer> from = new HashMap<>();
        for (int i = 0; i < roots.size(); i++) {
            for (PlacedBlock item : roots.get(i).fed()) {
                if (item.isReference()) {
                    from.put(item.block().id(), i + 1);
                }
            }
        }
        return from;
    }
}
