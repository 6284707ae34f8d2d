package evenrise.solver.table;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * A table of values out of a text, after RFC 4180 or with semicolons, tabs or bars.
 *
 * @param delimiter that parts its cells
 */
public record TextTable(ReadTable table, char delimiter) {
    private static final int MOST_COLUMNS = 1000;

    /** What is wrong with a text that is no table, for whoever made it. */
    public static final class NotWhole extends IOException {
        private static final long serialVersionUID = 1;

        NotWhole(long line, Exception cause) {
            // The parser's words are about its own classes and would help nobody.
            super(
                    "it is no whole table of values after line " + line
                            + ". Maybe a quote is not closed, or text follows a closing one",
                    cause);
        }
    }

    /** There are more cells than somebody wants to read. */
    public static final class TooManyCells extends IOException {
        private static final long serialVersionUID = 1;

        TooManyCells(int most) {
            super("it has more than " + most + " cells, too many for a list of equipment or readings");
        }
    }

    /**
     * @param mostCells bounds the memory that a hostile file takes
     * @throws IOException with a message for the user
     */
    public static TextTable of(String text, int mostCells) throws IOException {
        char delimiter = delimiter(text);
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setDelimiter(delimiter)
                .setIgnoreSurroundingSpaces(true)
                .setIgnoreEmptyLines(false)
                .get();
        List<ReadTable.Row> rows = new ArrayList<>();
        long line = 0;
        long all = 0;
        try (CSVParser parser = CSVParser.parse(text, format)) {
            for (CSVRecord each : parser) {
                line = parser.getCurrentLineNumber();
                all += each.size();
                if (all > mostCells) {
                    throw new TooManyCells(mostCells);
                }
                rows.add(new ReadTable.Row(
                        (int) each.getRecordNumber(),
                        each.stream().limit(MOST_COLUMNS).map(Cell::text).toList()));
            }
        } catch (TooManyCells e) {
            throw e;
        } catch (IOException | IllegalStateException | UncheckedIOException e) {
            throw new NotWhole(line, e);
        }
        return new TextTable(new ReadTable("", rows), delimiter);
    }

    /** UTF-8 where it is that, else the western eight-bit set that spreadsheets write. */
    public static String decoded(byte[] bytes) {
        Charset wide = bytes.length >= 2 && (bytes[0] & 0xff) == 0xff && (bytes[1] & 0xff) == 0xfe
                ? StandardCharsets.UTF_16LE
                : StandardCharsets.UTF_8;
        try {
            return bare(wide.newDecoder().decode(ByteBuffer.wrap(bytes)).toString());
        } catch (CharacterCodingException e) {
            return new String(bytes, Charset.forName("windows-1252"));
        }
    }

    /** Without the mark that says how a text is written. */
    public static String bare(String text) {
        return text.startsWith("\ufeff") ? text.substring(1) : text;
    }

    /** The separator that stands most often in the first lines, outside quotes. */
    private static char delimiter(String text) {
        String head = text.lines().limit(20).reduce("", (a, b) -> a + "\n" + b).replaceAll("\"[^\"]*\"", "");
        char best = ',';
        long most = 0;
        for (char candidate : new char[] {';', '\t', ',', '|'}) {
            long count = head.chars().filter(c -> c == candidate).count();
            if (count > most) {
                most = count;
                best = candidate;
            }
        }
        return best;
    }
}
