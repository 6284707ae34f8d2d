package evenrise.solver.drawing;

import evenrise.solver.document.Diagram.Kind;
import evenrise.solver.drawing.Sheet.Circle;
import evenrise.solver.drawing.Sheet.Line;
import evenrise.solver.drawing.Sheet.Text;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Draws the items of one sheet where the layout has placed them. */
final class SheetDrawing {
    private static final double LARGEST = 1.6;
    private static final double DEVICE = 1.2;
    private static final double SOURCE_RADIUS = 3.5;
    private static final double WINDING_RADIUS = 2.8;

    private final int number;
    private final PlacedBlock root;
    private final Map<String, Integer> sheetOf;
    private final Map<String, Integer> referredFrom;
    private final Map<PlacedBlock, Rectangle2D.Double> places;
    private final double scale;
    private final double shift;
    private final List<Line> lines = new ArrayList<>();
    private final List<Circle> circles = new ArrayList<>();
    private final List<Text> texts = new ArrayList<>();

    SheetDrawing(int number, PlacedBlock root, Map<String, Integer> sheetOf, Map<String, Integer> referredFrom) {
        TreeOnSheet tree = new TreeOnSheet(root);
        this.number = number;
        this.root = root;
        this.sheetOf = sheetOf;
        this.referredFrom = referredFrom;
        this.places = tree.places();
        this.scale = Math.min(LARGEST, Math.min(Sheet.WIDTH / tree.width(), Sheet.HEIGHT / tree.height()));
        this.shift = (Sheet.WIDTH - scale * tree.width()) / 2;
    }

    Sheet drawn() {
        draw(root);
        return new Sheet(
                number,
                lines.stream()
                        .map(it -> new Line(x(it.x1()), y(it.y1()), x(it.x2()), y(it.y2()), it.isHeavy()))
                        .toList(),
                circles.stream()
                        .map(it -> new Circle(x(it.x()), y(it.y()), scale * it.radius()))
                        .toList(),
                texts.stream()
                        .map(it -> new Text(
                                x(it.x()), y(it.y()), scale * it.width(), scale * it.size(), it.isBold(), it.text()))
                        .toList());
    }

    /** What leaves a sheet half empty is drawn larger. */
    private double x(double placed) {
        return shift + scale * placed;
    }

    private double y(double placed) {
        return scale * placed;
    }

    private void draw(PlacedBlock item) {
        if (!item.isNothing()) {
            block(item);
            wires(item);
        }
        item.fed().forEach(this::draw);
    }

    private double middle(PlacedBlock item) {
        return places.get(item).getCenterX();
    }

    private void block(PlacedBlock item) {
        Rectangle2D.Double place = places.get(item);
        double x = middle(item);
        double y = place.y + item.incoming();
        incoming(item, x, place.y);
        Kind kind = item.kind().orElseThrow();
        if (kind == Kind.SOURCE) {
            circles.add(new Circle(x, y + SOURCE_RADIUS, SOURCE_RADIUS));
            text(x, y + SOURCE_RADIUS + 0.9, PlacedBlock.TEXT, false, "~");
        } else if (kind == Kind.TRANSFORMER) {
            circles.add(new Circle(x, y + WINDING_RADIUS, WINDING_RADIUS));
            circles.add(new Circle(x, y + 9 - WINDING_RADIUS, WINDING_RADIUS));
        }
        box(item, x, y + item.symbol());
    }

    /** The line that comes in, its device, and what stands beside it. */
    private void incoming(PlacedBlock item, double x, double y) {
        if (item.block().parent().isEmpty()) {
            return;
        }
        double bottom = y + item.incoming();
        boolean begins = item == root;
        lines.add(new Line(x, y + (begins ? PlacedBlock.PITCH : 0), x, bottom, false));
        if (begins) {
            Integer from = referredFrom.get(item.block().id());
            text(x, y + PlacedBlock.PITCH - 0.8, PlacedBlock.TEXT, false, from == null ? "" : "from sheet " + from);
        }
        if (!item.block().device().isEmpty()) {
            double top = bottom - 4;
            lines.add(new Line(x - DEVICE, top, x + DEVICE, top + 2 * DEVICE, false));
            lines.add(new Line(x - DEVICE, top + 2 * DEVICE, x + DEVICE, top, false));
            double width = TextWidths.of(item.block().device(), PlacedBlock.TEXT, false);
            text(
                    x - PlacedBlock.side() - width / 2,
                    bottom - 2,
                    PlacedBlock.TEXT,
                    false,
                    item.block().device());
        }
        double line = bottom - 2 - PlacedBlock.PITCH * (item.block().lead().size() - 1);
        for (String lead : item.block().lead()) {
            double width = TextWidths.of(lead, PlacedBlock.TEXT, false);
            text(x + PlacedBlock.side() + width / 2, line, PlacedBlock.TEXT, false, lead);
            line += PlacedBlock.PITCH;
        }
    }

    private void box(PlacedBlock item, double x, double y) {
        double half = boxWidth(item) / 2;
        double bottom = y + item.box();
        boolean isHeavy = item.kind().orElseThrow() == Kind.NODE
                || item.kind().orElseThrow() == Kind.TRANSFORMER
                || item.kind().orElseThrow() == Kind.SOURCE;
        lines.add(new Line(x - half, y, x + half, y, isHeavy));
        lines.add(new Line(x - half, bottom, x + half, bottom, false));
        lines.add(new Line(x - half, y, x - half, bottom, false));
        lines.add(new Line(x + half, y, x + half, bottom, false));
        double line = y + PlacedBlock.padding() + PlacedBlock.NAME - 0.6;
        text(x, line, PlacedBlock.NAME, true, item.block().name());
        for (String each : item.isReference() ? List.of(reference(item)) : item.lines()) {
            line += PlacedBlock.PITCH;
            text(x, line, PlacedBlock.TEXT, false, each);
        }
    }

    private String reference(PlacedBlock item) {
        return "on sheet " + sheetOf.get(item.block().id());
    }

    private static double boxWidth(PlacedBlock item) {
        double width = TextWidths.of(item.block().name(), PlacedBlock.NAME, true);
        for (String line : item.lines()) {
            width = Math.max(width, TextWidths.of(line, PlacedBlock.TEXT, false));
        }
        return width + 2 * PlacedBlock.padding();
    }

    /** From the box down, along between two levels, and down to each that it feeds. */
    private void wires(PlacedBlock item) {
        if (item.fed().isEmpty()) {
            return;
        }
        double x = middle(item);
        double bottom = places.get(item).y + item.height();
        double top = item.fed().stream()
                .mapToDouble(each -> places.get(each).y)
                .min()
                .orElseThrow();
        double along = top - TreeOnSheet.BETWEEN_LEVELS / 2;
        lines.add(new Line(x, bottom, x, along, false));
        double left = item.fed().stream().mapToDouble(this::middle).min().orElseThrow();
        double right = item.fed().stream().mapToDouble(this::middle).max().orElseThrow();
        lines.add(new Line(
                Math.min(x, left), along, Math.max(x, right), along, item.fed().size() > 1));
        item.fed().forEach(each -> lines.add(new Line(middle(each), along, middle(each), top, false)));
    }

    private void text(double x, double y, double size, boolean isBold, String text) {
        if (!text.isEmpty()) {
            texts.add(new Text(x, y, TextWidths.of(text, size, isBold), size, isBold, text));
        }
    }
}
