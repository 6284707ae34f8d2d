package evenrise.solver.rendering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import evenrise.solver.browser.DrawnPages;
import evenrise.solver.document.Document;
import evenrise.solver.drawing.Sheet;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** What a drawing's file holds is what its sheets show. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class DxfFileTest {
    private static final Path PYTHON = Path.of("/usr/bin/python3");

    private Document document;
    private List<DrawnDiagram> drawings;
    private Map<String, byte[]> files;

    @BeforeAll
    void draw() {
        document = DrawnPages.of("meridian-hall").document();
        drawings = DrawnDiagram.all(document);
        files = DxfFile.all(document);
    }

    /** An entity's values by their codes, the first of each. */
    private static List<Map<String, String>> entities(byte[] file) {
        List<String> lines = Arrays.asList(new String(file, Charset.forName("windows-1252")).split("\r\n", -1));
        List<Map<String, String>> all = new ArrayList<>();
        for (int i = 0; i + 1 < lines.size(); i += 2) {
            if (lines.get(i).equals("0")) {
                all.add(new HashMap<>());
            }
            all.get(all.size() - 1).putIfAbsent(lines.get(i), lines.get(i + 1));
        }
        return all;
    }

    private static long count(byte[] file, String kind, String layer) {
        return entities(file).stream()
                .filter(each -> each.get("0").equals(kind) && layer.equals(each.get("8")))
                .count();
    }

    @Test
    void isOfDistributionAndControl() {
        assertThat(files).containsOnlyKeys("one-line", "control");
    }

    @Test
    void putsPowerControlAndTextOnLayersOfTheirOwn() {
        for (DrawnDiagram drawn : drawings) {
            byte[] file = files.get(drawn.diagram().id());
            List<Sheet> sheets = drawn.sheets();

            assertThat(count(file, "LINE", drawn.diagram().layer()))
                    .isEqualTo(sheets.stream()
                            .mapToLong(each -> each.lines().size())
                            .sum());
            assertThat(count(file, "CIRCLE", drawn.diagram().layer()))
                    .isEqualTo(sheets.stream()
                            .mapToLong(each -> each.circles().size())
                            .sum());
            // Below each frame the cautions, and once the headings of the title block.
            assertThat(count(file, "TEXT", "text"))
                    .isEqualTo(count(file, "ATTDEF", "text")
                            + sheets.stream()
                                    .mapToLong(each -> each.texts().size() + below())
                                    .sum());
        }
        assertThat(count(files.get("one-line"), "LINE", "control")).isZero();
        assertThat(count(files.get("control"), "LINE", "power")).isZero();
    }

    private int below() {
        return document.cautions().size();
    }

    @Test
    void namesEveryPanelAndEveryBoard() {
        assertThat(texts("one-line")).contains("supply", "amp-left", "amp-right", "rack-room", "video", "600 A, main");
        assertThat(texts("control"))
                .containsAll(document.tables().settings().rows().stream()
                        .map(each -> each.board())
                        .toList());
    }

    @Test
    void fillsInATitleBlockBelowEverySheetNumberedAsThePrintedOne() {
        List<String> numbers = new ArrayList<>();
        for (DrawnDiagram drawn : drawings) {
            byte[] file = files.get(drawn.diagram().id());

            assertThat(count(file, "INSERT", "frame"))
                    .isEqualTo(drawn.sheets().size())
                    .isEqualTo(fields(file, "TITLE").size());
            assertThat(fields(file, "PROJECT")).containsOnly(document.imprint().project());
            assertThat(fields(file, "REVISION")).containsOnly(document.imprint().revision());
            assertThat(fields(file, "ASSESSMENT")).containsOnly(document.headline());
            assertThat(fields(file, "TITLE"))
                    .isEqualTo(drawn.sheets().stream().map(drawn::title).toList());
            numbers.addAll(fields(file, "SHEET"));
        }
        assertThat(numbers)
                .isEqualTo(IntStream.rangeClosed(1, numbers.size())
                        .mapToObj(page -> document.imprint().sheet(SheetSection.DRAWINGS.number(), page))
                        .toList());
    }

    private static List<String> fields(byte[] file, String tag) {
        return entities(file).stream()
                .filter(each -> each.get("0").equals("ATTRIB") && each.get("2").equals(tag))
                .map(each -> each.get("1"))
                .toList();
    }

    private List<String> texts(String file) {
        return entities(files.get(file)).stream()
                .filter(each -> each.get("0").equals("TEXT"))
                .map(each -> each.get("1"))
                .toList();
    }

    /** By a program that nobody here wrote, where it is installed: Debian's python3-ezdxf. */
    @Test
    void isReadByAnotherProgramWithoutAnError(@TempDir Path folder) throws IOException, InterruptedException {
        assumeTrue(Files.isExecutable(PYTHON) && run("import ezdxf").equals("0:"), "python3-ezdxf is not installed");
        for (DrawnDiagram drawn : drawings) {
            Path file = folder.resolve(drawn.diagram().id() + ".dxf");
            Files.write(file, files.get(drawn.diagram().id()));

            String read = run(
                    "import ezdxf; d=ezdxf.readfile(r'" + file + "'); m=d.modelspace(); "
                            + "print(len(d.audit().errors), d.dxfversion, len(m.query('LINE')), len(m.query('CIRCLE')), "
                            + "len(m.query('TEXT')), sorted(l.dxf.name for l in d.layers if l.dxf.name in "
                            + "('power','control','text','frame')), "
                            + "[i.get_attrib_text('SHEET') for i in m.query('INSERT')], "
                            + "set(len(i.attribs) == len(list(d.blocks.get(i.dxf.name).attdefs())) for i in m.query('INSERT')))");

            int sheets = drawn.sheets().size();
            assertThat(read)
                    .isEqualTo("0:0 AC1009 "
                            + (drawn.sheets().stream()
                                            .mapToInt(each -> each.lines().size())
                                            .sum()
                                    + 4 * sheets) + " "
                            + drawn.sheets().stream()
                                    .mapToInt(each -> each.circles().size())
                                    .sum() + " "
                            + (drawn.sheets().stream()
                                            .mapToInt(each -> each.texts().size())
                                            .sum()
                                    + below() * sheets)
                            + " ['control', 'frame', 'power', 'text'] "
                            + fields(files.get(drawn.diagram().id()), "SHEET").stream()
                                    .map(each -> "'" + each + "'")
                                    .collect(Collectors.joining(", ", "[", "]"))
                            + " {True}");
        }
    }

    /** Exit code and what it said. */
    private static String run(String script) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(PYTHON.toString(), "-c", script)
                .redirectErrorStream(true)
                .start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        return process.exitValue() + ":" + said;
    }
}
