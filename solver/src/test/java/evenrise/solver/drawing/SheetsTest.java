package evenrise.solver.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.solver.document.Diagram;
import evenrise.solver.document.Diagram.Block;
import evenrise.solver.document.Diagram.Kind;
import evenrise.solver.drawing.Sheet.Line;
import evenrise.solver.drawing.Sheet.Text;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType1Font;
import org.apache.pdfbox.pdmodel.font.Standard14Fonts;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every part of a drawing is on a sheet, legible, and beside the others. */
class SheetsTest {
    /** On A3, millimetres. */
    private static final double LEAST_CAPITALS = 1.8;

    private static final double DESCENT = 0.21;

    private static Block block(String id, Kind kind, String parent) {
        return new Block(
                id,
                kind,
                Optional.ofNullable(parent),
                parent == null ? "" : "1200 A",
                parent == null ? List.of() : List.of("3 × 250 kcmil", "100 m"),
                List.of("120/208 V, 3 ph", "1200 A, main 1200 A", "fault 64.9 kA"));
    }

    private static Diagram diagram(Stream<Block> blocks) {
        return new Diagram("one-line", "One-line diagram", "power", "", blocks.toList());
    }

    private static Diagram row(int panels) {
        return diagram(Stream.concat(
                Stream.of(block("supply", Kind.SOURCE, null)),
                IntStream.range(0, panels).mapToObj(i -> block("panel-" + i, Kind.PANEL, "supply"))));
    }

    /** Each panel feeds the next. */
    private static Diagram chain(int panels) {
        return diagram(Stream.concat(
                Stream.of(block("supply", Kind.SOURCE, null)),
                IntStream.range(0, panels)
                        .mapToObj(i -> block("panel-" + i, Kind.PANEL, i == 0 ? "supply" : "panel-" + (i - 1)))));
    }

    /** Ten mains with a transformer each and nine panels behind it: 111 blocks; a source that feeds one panel. */
    private static Diagram campus() {
        List<Block> blocks = new ArrayList<>(List.of(block("supply", Kind.SOURCE, null)));
        for (int main = 0; main < 10; main++) {
            blocks.add(block("main-" + main, Kind.NODE, "supply"));
            blocks.add(block("transformer-" + main, Kind.TRANSFORMER, "main-" + main));
            for (int panel = 0; panel < 9; panel++) {
                blocks.add(block("panel-" + main + "-" + panel, Kind.PANEL, "transformer-" + main));
            }
        }
        blocks.add(block("generator", Kind.SOURCE, null));
        blocks.add(block("core", Kind.PANEL, "generator"));
        return diagram(blocks.stream());
    }

    /** Twelve rooms of ten panels with their boards, each room behind the supply, and as large a one behind every second. */
    private static Diagram rooms() {
        List<Block> blocks = new ArrayList<>(List.of(block("place not stated", Kind.SOURCE, null)));
        for (int room = 0; room < 12; room++) {
            blocks.add(room("Level " + room, "place not stated"));
            if (room % 2 == 0) {
                blocks.add(room("Amplifier room of level " + room, "Level " + room));
            }
        }
        return diagram(blocks.stream());
    }

    private static Block room(String id, String parent) {
        List<String> lines = IntStream.range(0, 10)
                .boxed()
                .flatMap(i -> Stream.of("PANEL-" + i + ": 1200 A, 3 × 250 kcmil, 100 m", "boards B-1, B-2 and 7 more"))
                .toList();
        return new Block(id, Kind.NODE, Optional.of(parent), "", List.of("10 feeders"), lines);
    }

    static Stream<Named<Supplier<Diagram>>> diagrams() {
        return Stream.of(
                Named.of("supply alone", () -> row(0)),
                Named.of("four panels", () -> row(4)),
                Named.of("a hundred panels on one bus", () -> row(100)),
                Named.of("twelve panels in a chain", () -> chain(12)),
                Named.of("a campus", SheetsTest::campus),
                Named.of("rooms full of panels", SheetsTest::rooms));
    }

    private static Rectangle2D rectangle(Text text) {
        double top = text.y() - text.capitals();
        return new Rectangle2D.Double(text.left(), top, text.width(), text.capitals() + DESCENT * text.size());
    }

    @ParameterizedTest
    @MethodSource("diagrams")
    void letNoTextRunIntoAnotherOrIntoALine(Supplier<Diagram> diagram) {
        for (Sheet sheet : Sheets.of(diagram.get())) {
            List<Text> texts = sheet.texts();
            for (int i = 0; i < texts.size(); i++) {
                Rectangle2D here = rectangle(texts.get(i));
                for (int k = i + 1; k < texts.size(); k++) {
                    assertThat(here.intersects(rectangle(texts.get(k))))
                            .as("%s and %s on sheet %d", texts.get(i), texts.get(k), sheet.number())
                            .isFalse();
                }
                for (Line line : sheet.lines()) {
                    assertThat(new Line2D.Double(line.x1(), line.y1(), line.x2(), line.y2()).intersects(here))
                            .as("%s and %s on sheet %d", texts.get(i), line, sheet.number())
                            .isFalse();
                }
            }
        }
    }

    @ParameterizedTest
    @MethodSource("diagrams")
    void areLegibleAndInsideTheirFrame(Supplier<Diagram> diagram) {
        Rectangle2D frame = new Rectangle2D.Double(-1e-6, -1e-6, Sheet.WIDTH + 2e-6, Sheet.HEIGHT + 2e-6);
        for (Sheet sheet : Sheets.of(diagram.get())) {
            assertThat(sheet.texts()).allSatisfy(text -> {
                assertThat(text.capitals()).isGreaterThanOrEqualTo(LEAST_CAPITALS);
                assertThat(frame.contains(rectangle(text))).as(text.text()).isTrue();
            });
            assertThat(sheet.lines())
                    .allSatisfy(line -> assertThat(
                                    frame.contains(line.x1(), line.y1()) && frame.contains(line.x2(), line.y2()))
                            .isTrue());
        }
    }

    /** A block that goes on upon the next sheet stands there again; all others once, but for references. */
    @ParameterizedTest
    @MethodSource("diagrams")
    void showEveryPart(Supplier<Diagram> diagram) {
        List<Sheet> sheets = Sheets.of(diagram.get());
        for (Block block : diagram.get().blocks()) {
            assertThat(sheets.stream()
                            .flatMap(sheet -> sheet.texts().stream())
                            .filter(Text::isBold)
                            .filter(text -> text.text().equals(block.id())))
                    .as(block.id())
                    .isNotEmpty();
        }
    }

    @Test
    void referToTheSheetThatGoesOn() {
        List<Sheet> sheets = Sheets.of(chain(12));

        assertThat(sheets).hasSizeGreaterThan(1);
        for (Sheet sheet : sheets) {
            for (int i = 0; i < sheet.texts().size(); i++) {
                String text = sheet.texts().get(i).text();
                if (text.startsWith("on sheet ")) {
                    Sheet other = sheets.get(Integer.parseInt(text.substring("on sheet ".length())) - 1);
                    assertThat(other.texts().stream().map(Text::text))
                            .contains(sheet.texts().get(i - 1).text(), "from sheet " + sheet.number());
                }
            }
        }
        assertThat(sheets.get(0).texts().stream().map(Text::text)).contains("on sheet 2");
    }

    @Test
    void drawALineForEachThatIsFed() {
        Sheet sheet = Sheets.of(row(4)).get(0);

        // From the bus, half a gap, and down through the device: two lines of one place a panel.
        assertThat(sheet.lines().stream().filter(line -> line.x1() == line.x2() && !isSideOfABox(sheet, line)))
                .hasSize(1 + 2 * 4);
    }

    /** The left and right edge of a box are as far from a text's middle as half a box. */
    private static boolean isSideOfABox(Sheet sheet, Line line) {
        return sheet.texts().stream().filter(Text::isBold).noneMatch(text -> Math.abs(text.x() - line.x1()) < 1e-6);
    }

    @Test
    void areTheSameEachTime() {
        assertThat(Sheets.of(campus())).isEqualTo(Sheets.of(campus()));
    }

    /** The metrics of Helvetica that every PDF reader knows; Liberation Sans is made to be as wide. */
    @Test
    void measureTextsAsTheFontDoes() throws IOException {
        PDFont helvetica = new PDType1Font(Standard14Fonts.FontName.HELVETICA);

        try (TrueTypeFont font = new TTFParser(true)
                .parse(new RandomAccessReadBuffer(SheetsTest.class
                        .getResourceAsStream("/liberation/LiberationSans-Regular.ttf")
                        .readAllBytes()))) {
            assertThat(TextWidths.CAPITALS)
                    .isEqualTo(font.getPath("H").getBounds2D().getMaxY() / font.getUnitsPerEm());
        }
        assertThat(TextWidths.of("3 x 250 kcmil, Panel", 1, false))
                .isCloseTo(helvetica.getStringWidth("3 x 250 kcmil, Panel") / 1000, within(2e-3));
    }
}
