package evenrise.solver.document;

import java.util.List;
import java.util.Optional;

/**
 * What a drawing shows, before it is laid out: things that feed or start each other, as a forest.
 *
 * @param id names its files
 * @param layer that its lines lie on
 * @param note what a reader must know to read it
 * @param blocks each behind its parent
 */
public record Diagram(String id, String title, String layer, String note, List<Block> blocks) {
    /** What a block stands for, and which symbol it has. */
    public enum Kind {
        SOURCE,
        TRANSFORMER,
        NODE,
        PANEL,
        COMMAND,
        BOARD,
        /** Stands for a block that another sheet draws. */
        REFERENCE
    }

    /**
     * One thing.
     *
     * @param parent id of what feeds or starts it; empty for what nothing does
     * @param device stands on the left of the line that comes in: what protects it
     * @param lead stands on its right, line by line: what it runs in
     * @param lines what it is, without its id
     */
    public record Block(
            String id, Kind kind, Optional<String> parent, String device, List<String> lead, List<String> lines) {
        public Block {
            lead = List.copyOf(lead);
            lines = List.copyOf(lines);
        }

        /** Its id as people read it. */
        public String name() {
            return Plain.text(id.strip(), 60);
        }
    }

    public Diagram {
        blocks = List.copyOf(blocks);
    }
}
