package evenrise.solver.drawing;

import evenrise.solver.document.Diagram;
import evenrise.solver.document.Diagram.Block;
import evenrise.solver.document.Diagram.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A block on one sheet, with what it feeds or starts there. Compared by identity: a block may stand on many sheets. */
final class PlacedBlock {
    static final double TEXT = 2.7;
    static final double NAME = 3.2;
    static final double PITCH = 3.4;
    private static final double INCOMING = 9;
    private static final double SIDE = 2.2;
    private static final double PADDING = 1.6;
    private static final String LONGEST_REFERENCE = "on sheet 000";

    private final Block block;
    private final boolean begins;
    private final List<PlacedBlock> fed = new ArrayList<>();

    private PlacedBlock(Block block, boolean begins) {
        this.block = block;
        this.begins = begins;
    }

    static PlacedBlock of(Block block) {
        return new PlacedBlock(block, false);
    }

    /** The first of a sheet, above which is told where it comes from. */
    static PlacedBlock beginning(Block block) {
        return new PlacedBlock(block, true);
    }

    /** Holds together what has no common parent; takes no room. */
    static PlacedBlock nothing() {
        return new PlacedBlock(null, false);
    }

    /** Stands for a block with all behind it, which another sheet draws. */
    static PlacedBlock reference(Block to) {
        return new PlacedBlock(
                new Block(to.id(), Kind.REFERENCE, to.parent(), to.device(), to.lead(), List.of()), false);
    }

    void add(PlacedBlock item) {
        fed.add(item);
    }

    void removeLast() {
        fed.remove(fed.size() - 1);
    }

    List<PlacedBlock> fed() {
        return fed;
    }

    boolean isNothing() {
        return block == null;
    }

    Block block() {
        return block;
    }

    boolean isReference() {
        return block != null && block.kind() == Kind.REFERENCE;
    }

    /** Room above its box for the line that comes in and for its symbol. */
    double top() {
        return isNothing() ? 0 : incoming() + symbol();
    }

    /** Length of the line that comes in. */
    double incoming() {
        return begins ? INCOMING + PITCH : INCOMING;
    }

    double symbol() {
        return switch (block.kind()) {
            case SOURCE -> 7;
            case TRANSFORMER -> 9;
            default -> 0;
        };
    }

    double width() {
        if (isNothing()) {
            return 0.1;
        }
        double width = TextWidths.of(block.name(), NAME, true);
        for (String line : lines()) {
            width = Math.max(width, TextWidths.of(line, TEXT, false));
        }
        double beside = TextWidths.of(block.device(), TEXT, false);
        for (String line : block.lead()) {
            beside = Math.max(beside, TextWidths.of(line, TEXT, false));
        }
        return Math.max(width + 2 * PADDING, 2 * (beside + SIDE));
    }

    double height() {
        return isNothing() ? 0.1 : top() + box();
    }

    /** Height of its box. */
    double box() {
        return PADDING + NAME + PITCH * lines().size() + PADDING;
    }

    /** What its box holds below its id; of a reference, room for the number of a sheet. */
    List<String> lines() {
        return isReference() ? List.of(LONGEST_REFERENCE) : block.lines();
    }

    Optional<Diagram.Kind> kind() {
        return Optional.ofNullable(block).map(Block::kind);
    }

    static double side() {
        return SIDE;
    }

    static double padding() {
        return PADDING;
    }
}
