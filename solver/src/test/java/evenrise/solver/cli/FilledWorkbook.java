package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.solver.table.ReadTable;
import evenrise.solver.table.TableFileReader;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/** A workbook with readings typed into its sheets, as tables of values hold them row for row. */
final class FilledWorkbook {
    private static final Pattern SHEET = Pattern.compile("<sheet name=\"([^\"]+)\" [^>]*sheetId=\"(\\d+)\"");

    private FilledWorkbook() {}

    /**
     * @param names of the sheets, each with a table of that name in {@code tables}
     * @return where it was written
     */
    static Path write(Path blank, Path filled, Path tables, String... names) throws IOException {
        Map<String, byte[]> parts = parts(blank);
        Matcher sheet = SHEET.matcher(text(parts, "xl/workbook.xml"));
        Map<String, String> files = new HashMap<>();
        while (sheet.find()) {
            files.put(sheet.group(1), "xl/worksheets/sheet" + sheet.group(2) + ".xml");
        }
        for (String name : names) {
            ReadTable table =
                    TableFileReader.read(tables.resolve(name + ".csv")).get(0);
            parts.put(
                    files.get(name), typed(text(parts, files.get(name)), table).getBytes(StandardCharsets.UTF_8));
        }
        try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(filled))) {
            for (Map.Entry<String, byte[]> part : parts.entrySet()) {
                out.putNextEntry(new ZipEntry(part.getKey()));
                out.write(part.getValue());
            }
        }
        return filled;
    }

    private static String text(Map<String, byte[]> parts, String name) {
        return new String(parts.get(name), StandardCharsets.UTF_8);
    }

    private static Map<String, byte[]> parts(Path file) throws IOException {
        Map<String, byte[]> parts = new LinkedHashMap<>();
        try (InputStream in = Files.newInputStream(file);
                ZipInputStream zip = new ZipInputStream(in)) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                parts.put(entry.getName(), zip.readAllBytes());
            }
        }
        return parts;
    }

    private static String typed(String xml, ReadTable table) {
        String typed = xml;
        List<ReadTable.Row> rows = table.rows();
        for (int row = 1; row < rows.size(); row++) {
            for (int column = 0; column < rows.get(row).cells().size(); column++) {
                String text = rows.get(row).cell(column).text();
                if (!text.isEmpty()) {
                    String at = ReadTable.letters(column) + (row + 1);
                    Matcher cell = Pattern.compile("<c r=\"" + at + "\"( s=\"\\d+\")[^>]*>.*?</c>")
                            .matcher(typed);
                    assertThat(cell.find()).as(at).isTrue();
                    typed = cell.replaceFirst("<c r=\"" + at + "\"$1" + Matcher.quoteReplacement(content(text)));
                }
            }
        }
        return typed;
    }

    private static String content(String text) {
        return text.matches("-?\\d+(\\.\\d+)?")
                ? "><v>" + text + "</v></c>"
                : " t=\"inlineStr\"><is><t>" + text.replace("&", "&amp;").replace("<", "&lt;") + "</t></is></c>";
    }
}
