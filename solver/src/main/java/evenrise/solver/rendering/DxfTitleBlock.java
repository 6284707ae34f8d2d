package evenrise.solver.rendering;

import evenrise.model.contract.Harmless;
import evenrise.model.project.TitleBlock;
import evenrise.solver.document.Imprint;
import evenrise.solver.drawing.Sheet;
import evenrise.solver.drawing.TextWidths;
import java.util.List;

/**
 * The title block below the frame of each sheet, as a block with fields, which other programs list, fill in anew and take
 * out by their tags.
 */
final class DxfTitleBlock {
    static final String NAME = "TITLE_BLOCK";
    static final double HEIGHT = 40;

    private static final int COLUMNS = 4;
    private static final double CELL = Sheet.WIDTH / COLUMNS;
    private static final double ROW = 10;
    private static final double EDGE = 1.5;
    private static final double HEADING = 1.8;
    private static final double VALUE = 2.2;

    /** Release 12 holds 255 characters. */
    private static final int LONGEST = 250;

    /** @param cells that it is wide */
    private record Field(String tag, String heading, int column, int row, int cells) {
        double left() {
            return column * CELL + EDGE;
        }

        double room() {
            return cells * CELL - 2 * EDGE;
        }

        double below(double part) {
            return row * ROW + part * ROW;
        }
    }

    private static final List<Field> FIELDS = List.of(
            new Field("PROJECT", "Project", 0, 0, 1),
            new Field("CLIENT", "Client", 1, 0, 1),
            new Field("SITE", "Site", 2, 0, 1),
            new Field("NUMBER", "Job number", 3, 0, 1),
            new Field("TITLE", "Drawing", 0, 1, 1),
            new Field("SHEET", "Sheet", 1, 1, 1),
            new Field("REVISION", "Revision", 2, 1, 1),
            new Field("DATE", "Date", 3, 1, 1),
            new Field("ISSUED_FOR", "Issued for", 0, 2, 1),
            new Field("ISSUED_BY", "Issued by", 1, 2, 1),
            new Field("DRAWN_BY", "Drawn by", 2, 2, 1),
            new Field("CHECKED_BY", "Checked by", 3, 2, 1),
            new Field("ASSESSMENT", "Assessment", 0, 3, 3),
            new Field("FILE", "Project file SHA-256", 3, 3, 1));

    private final Imprint imprint;
    private final String headline;

    DxfTitleBlock(Imprint imprint, String headline) {
        this.imprint = imprint;
        this.headline = headline;
    }

    /** What it looks like and asks for, from its upper left corner. */
    static void define(DxfCodes out) {
        out.begin(0, 0);
        out.pairs("0", "BLOCK", "8", "0", "2", NAME, "70", "2", "10", "0.0", "20", "0.0", "3", NAME);
        for (int row = 1; row <= HEIGHT / ROW; row++) {
            out.line("frame", 0, row * ROW, Sheet.WIDTH, row * ROW);
        }
        out.line("frame", 0, 0, 0, HEIGHT);
        out.line("frame", Sheet.WIDTH, 0, Sheet.WIDTH, HEIGHT);
        for (Field each : FIELDS) {
            if (each.column() > 0) {
                double x = each.column() * CELL;
                out.line("frame", x, each.row() * ROW, x, (each.row() + 1) * ROW);
            }
            double wide = TextWidths.of(each.heading(), HEADING / TextWidths.CAPITALS, false);
            out.text(each.left(), each.below(0.32), wide, HEADING, each.heading());
            out.asked(each.tag(), each.heading(), each.left(), each.below(0.8), each.room(), VALUE);
        }
        out.pairs("0", "ENDBLK", "8", "0");
    }

    /**
     * Filled in, below a sheet that begins at the corner that the codes count from.
     *
     * @param title of the drawing
     * @param sheet its number in the printed set
     */
    void insert(DxfCodes out, String title, String sheet) {
        out.pairs("0", "INSERT", "8", "frame", "66", "1", "2", NAME);
        out.point("10", 0, Sheet.HEIGHT);
        for (Field each : FIELDS) {
            String value = Harmless.cut(value(each.tag(), title, sheet), LONGEST);
            double wide = Math.min(each.room(), TextWidths.of(value, VALUE / TextWidths.CAPITALS, false));
            out.field(
                    each.tag(),
                    value,
                    each.left(),
                    Sheet.HEIGHT + each.below(0.8),
                    value.isBlank() ? each.room() : wide,
                    VALUE);
        }
        out.pairs("0", "SEQEND", "8", "frame");
    }

    private String value(String tag, String title, String sheet) {
        TitleBlock stated = imprint.title();
        return switch (tag) {
            case "PROJECT" -> imprint.project();
            case "CLIENT" -> stated.client().orElse("");
            case "SITE" -> stated.site().orElse("");
            case "NUMBER" -> stated.number().orElse("");
            case "TITLE" -> title;
            case "SHEET" -> sheet;
            case "REVISION" -> imprint.revision();
            case "DATE" -> imprint.date();
            case "ISSUED_FOR" -> stated.issuedFor().orElse("");
            case "ISSUED_BY" -> stated.issuedBy().orElse("");
            case "DRAWN_BY" -> stated.drawnBy().orElse("");
            case "CHECKED_BY" -> stated.checkedBy().orElse("");
            case "ASSESSMENT" -> headline;
            case "FILE" -> imprint.shortHash();
            default -> throw new IllegalArgumentException(tag);
        };
    }
}
