package evenrise.solver.rendering;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.solver.browser.DrawnPages;
import evenrise.solver.document.Document;
import evenrise.solver.drawing.Sheet;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.function.Function;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;

/** A drawing's file as a picture has every line, circle and text of it, where the file has it. */
class DxfPictureTest {
    private static Element read(byte[] file) throws Exception {
        return DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(DxfPicture.of(file).getBytes(StandardCharsets.UTF_8)))
                .getDocumentElement();
    }

    private static byte[] file(String... pairs) {
        return String.join("\r\n", pairs).getBytes(StandardCharsets.US_ASCII);
    }

    @Test
    void ofADemoHasAsManyPartsAsItsSheets() throws Exception {
        Document document = DrawnPages.of("lantern-yard").document();

        for (DrawnDiagram drawn : DrawnDiagram.all(document)) {
            Element svg = read(DxfFile.all(document).get(drawn.diagram().id()));

            assertThat(svg.getElementsByTagName("circle").getLength())
                    .isEqualTo(count(drawn.sheets(), sheet -> sheet.circles().size()));
            // And four lines of each frame, sixteen of its title block.
            assertThat(svg.getElementsByTagName("line").getLength())
                    .isEqualTo(count(drawn.sheets(), sheet -> sheet.lines().size() + 4 + 16));
            assertThat(svg.getElementsByTagName("text").getLength())
                    .isGreaterThan(count(drawn.sheets(), sheet -> sheet.texts().size()));
        }
    }

    private static int count(List<Sheet> sheets, Function<Sheet, Integer> parts) {
        return sheets.stream().mapToInt(parts::apply).sum();
    }

    /** What is up in the file is up in the picture. */
    @Test
    void putsALineWhereItIs() throws Exception {
        Element line = (Element)
                read(file("0", "LINE", "8", "power", "10", "1.5", "20", "20", "11", "4", "21", "10", "0", "EOF"))
                        .getElementsByTagName("line")
                        .item(0);

        assertThat(line.getAttribute("x1")).isEqualTo("1.50");
        assertThat(line.getAttribute("y1")).isEqualTo("-20.00");
        assertThat(line.getAttribute("x2")).isEqualTo("4.00");
        assertThat(line.getAttribute("y2")).isEqualTo("-10.00");
    }

    @Test
    void takesNamesForTexts() throws Exception {
        Element text = (Element) read(file(
                        "0",
                        "TEXT",
                        "8",
                        "text",
                        "10",
                        "0",
                        "20",
                        "0",
                        "40",
                        "2",
                        "1",
                        "<script>&\"",
                        "11",
                        "30",
                        "21",
                        "0",
                        "0",
                        "EOF"))
                .getElementsByTagName("text")
                .item(0);

        assertThat(text.getTextContent()).isEqualTo("<script>&\"");
        assertThat(text.getAttribute("textLength")).isEqualTo("30.00");
    }
}
