package evenrise.solver.rendering;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.dhatim.fastexcel.reader.ReadableWorkbook;

/** Workbooks as a spreadsheet program leaves them that has computed every formula anew. */
final class Recalculated {
    private Recalculated() {}

    /** Values by {@code sheet!cell}, after the program; none of its own sheets is written. */
    static Map<String, String> of(byte[] workbook, Path folder) throws IOException, InterruptedException {
        Path in = Files.write(folder.resolve("in.xlsx"), workbook);
        Path out = Files.createDirectories(folder.resolve("out"));
        Process process = new ProcessBuilder(
                        "soffice",
                        "--headless",
                        "-env:UserInstallation=" + folder.resolve("user").toUri(),
                        "--convert-to",
                        "xlsx",
                        "--outdir",
                        out.toString(),
                        in.toString())
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("said.txt").toFile())
                .start();
        assertThat(process.waitFor(120, TimeUnit.SECONDS)).isTrue();
        return values(Files.newInputStream(out.resolve("in.xlsx")));
    }

    /** Values by {@code sheet!cell}, as they stand in a file. */
    static Map<String, String> values(InputStream file) throws IOException {
        Map<String, String> values = new HashMap<>();
        try (file;
                ReadableWorkbook workbook = new ReadableWorkbook(file)) {
            workbook.getSheets().forEach(sheet -> {
                try {
                    sheet.read()
                            .forEach(row -> row.stream()
                                    .filter(cell -> cell != null && cell.getRawValue() != null)
                                    .forEach(cell ->
                                            values.put(sheet.getName() + "!" + cell.getAddress(), cell.getRawValue())));
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            });
        }
        return values;
    }
}
