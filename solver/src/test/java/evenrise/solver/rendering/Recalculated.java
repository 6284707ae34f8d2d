package evenrise.solver.rendering;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.function.BinaryOperator;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.dhatim.fastexcel.reader.ReadableWorkbook;

/** Workbooks as a spreadsheet program leaves them that has computed every formula anew. */
final class Recalculated {
    private static final Pattern RESULT = Pattern.compile("(</f>)<v>[^<]*</v></c>");

    private Recalculated() {}

    /** The same archive with the texts of its entries changed, by their names. */
    static byte[] edited(byte[] workbook, BinaryOperator<String> change) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(workbook));
                ZipOutputStream out = new ZipOutputStream(bytes)) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                out.putNextEntry(new ZipEntry(entry.getName()));
                String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
                out.write(change.apply(entry.getName(), text).getBytes(StandardCharsets.UTF_8));
            }
        }
        return bytes.toByteArray();
    }

    /** Values by {@code sheet!cell}; it is given no results, for it would believe them. */
    static Map<String, String> of(byte[] workbook, Path folder) throws IOException, InterruptedException {
        Path in = Files.write(
                folder.resolve("in.xlsx"),
                edited(workbook, (name, text) -> RESULT.matcher(text).replaceAll("$1</c>")));
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
