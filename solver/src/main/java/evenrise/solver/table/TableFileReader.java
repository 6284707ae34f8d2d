package evenrise.solver.table;

import java.io.BufferedInputStream;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.ReadingOptions;

/** Takes the cells out of a file. A workbook's merged cells hold their value in the first of them, the others are empty. */
public final class TableFileReader {
    /** Larger files are no equipment lists; of ten thousand rows one has some ten million bytes. */
    private static final long MOST_BYTES = 50L << 20;

    private static final int MOST_COLUMNS = 1000;

    /** Most cells of all sheets: bounds the memory that a hostile file takes. */
    private static final int MOST_CELLS = 2_000_000;

    private static final int MOST_SHEETS = 100;
    private static final long MOST_SHEET_BYTES = 500L << 20;

    private static final BigDecimal DAYS_TO_1904 =
            BigDecimal.valueOf(ChronoUnit.DAYS.between(LocalDate.of(1899, 12, 30), LocalDate.of(1904, 1, 1)));

    private static final String NOT_WHOLE =
            "it is no whole workbook. Maybe open it in a spreadsheet program and save it anew";

    private TableFileReader() {}

    /** @throws IOException with a message for the user where it cannot be read */
    public static List<ReadTable> read(Path file) throws IOException {
        if (Files.isDirectory(file)) {
            throw new IOException("it is a directory");
        }
        if (Files.size(file) > MOST_BYTES) {
            throw new IOException("it is larger than 50 MiB");
        }
        try (InputStream in = new BufferedInputStream(Files.newInputStream(file))) {
            in.mark(4);
            byte[] head = in.readNBytes(4);
            in.reset();
            boolean isZip = head.length == 4 && head[0] == 'P' && head[1] == 'K';
            boolean isOld = head.length == 4 && (head[0] & 0xff) == 0xd0 && (head[1] & 0xff) == 0xcf;
            if (isOld) {
                throw new IOException("it is a workbook of the old binary kind. Maybe save it as .xlsx");
            }
            return isZip
                    ? workbook(in, WorkbookGuard.unpackedBytes(file, MOST_BYTES))
                    : List.of(TextTable.of(TextTable.decoded(in.readAllBytes()), MOST_CELLS)
                            .table());
        }
    }

    /** A workbook of our own that is not written yet. */
    public static List<ReadTable> workbook(byte[] ours) throws IOException {
        return workbook(new ByteArrayInputStream(ours), ours.length);
    }

    private static List<ReadTable> workbook(InputStream in, long unpackedBytes) throws IOException {
        List<ReadTable> sheets = new ArrayList<>();
        long cells = 0;
        try (ReadableWorkbook workbook = new ReadableWorkbook(in, new ReadingOptions(true, false))) {
            List<org.dhatim.fastexcel.reader.Sheet> all = workbook.getSheets().toList();
            // Many sheets may be one part of the file, which is then read as often.
            if (all.size() > MOST_SHEETS || all.size() * unpackedBytes > MOST_SHEET_BYTES) {
                throw new TooMany("it has " + all.size() + " sheets, too many or too large for an equipment list");
            }
            for (org.dhatim.fastexcel.reader.Sheet sheet : all) {
                List<ReadTable.Row> rows = new ArrayList<>();
                try (Stream<org.dhatim.fastexcel.reader.Row> stream = sheet.openStream()) {
                    for (Iterator<org.dhatim.fastexcel.reader.Row> each = stream.iterator(); each.hasNext(); ) {
                        ReadTable.Row row = row(each.next(), workbook.isDate1904());
                        cells += 1 + row.cells().size();
                        if (cells > MOST_CELLS) {
                            throw new TooMany();
                        }
                        rows.add(row);
                    }
                }
                boolean isCautions = !rows.isEmpty() && rows.stream().allMatch(ReadTable.Row::isCaution);
                if (!isCautions) {
                    sheets.add(new ReadTable(sheet.getName() == null ? "" : sheet.getName(), rows));
                }
            }
        } catch (TooMany e) {
            throw e;
        } catch (IOException | RuntimeException e) {
            // What the parsers throw for some broken workbooks is not declared; nothing of ours throws in there. Their
            // words are about their own classes and would help nobody.
            throw new IOException(NOT_WHOLE, e);
        }
        return sheets;
    }

    /** More cells than a list has. */
    private static final class TooMany extends IOException {
        private static final long serialVersionUID = 1;

        TooMany(String message) {
            super(message);
        }

        TooMany() {
            this("it has more than " + MOST_CELLS + " cells, too many for an equipment list");
        }
    }

    private static ReadTable.Row row(org.dhatim.fastexcel.reader.Row row, boolean isSince1904) {
        List<Cell> cells = new ArrayList<>();
        for (int column = 0; column < Math.min(row.getCellCount(), MOST_COLUMNS); column++) {
            org.dhatim.fastexcel.reader.Cell cell = row.getCell(column);
            cells.add(cell == null ? Cell.EMPTY : cell(cell, isSince1904));
        }
        return new ReadTable.Row(row.getRowNum(), cells);
    }

    private static Cell cell(org.dhatim.fastexcel.reader.Cell cell, boolean isSince1904) {
        String raw = cell.getRawValue() == null ? "" : cell.getRawValue().strip();
        return switch (cell.getType()) {
            case EMPTY -> Cell.EMPTY;
            case ERROR -> new Cell(raw, Cell.Kind.ERROR);
            case FORMULA -> formula(raw);
            case NUMBER -> isDate(cell) ? date(raw, isSince1904) : new Cell(raw, Cell.Kind.NUMBER);
            case STRING, BOOLEAN -> Cell.text(cell.getText() == null ? "" : cell.getText());
        };
    }

    /** Counted from the last days of 1899, as most workbooks do; some count from 1904. */
    private static Cell date(String raw, boolean isSince1904) {
        String days = isSince1904 ? new BigDecimal(raw).add(DAYS_TO_1904).toPlainString() : raw;
        return new Cell(days, Cell.Kind.DATE);
    }

    /** A formula counts for the value that the workbook has kept of it. */
    private static Cell formula(String raw) {
        if (raw.isEmpty()) {
            return new Cell("", Cell.Kind.FORMULA);
        }
        return raw.startsWith("#") ? new Cell(raw, Cell.Kind.ERROR) : Cell.text(raw);
    }

    private static boolean isDate(org.dhatim.fastexcel.reader.Cell cell) {
        String format = cell.getDataFormatString();
        return format != null
                && format.toLowerCase(Locale.ROOT)
                        .replaceAll("\\[[^]]*]|\"[^\"]*\"", "")
                        .matches(".*(yy|d/|/d|mmm|hh).*");
    }
}
