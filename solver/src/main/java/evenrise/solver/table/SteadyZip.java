package evenrise.solver.table;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.Collections;
import java.util.HashMap;
import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.apache.commons.compress.utils.SeekableInMemoryByteChannel;

/** An archive that is the same for the same contents, whenever it is made: no entry carries a time of its own. */
public final class SteadyZip {
    /** When a workbook was written, which would make two of the same contents differ. */
    private static final Pattern CREATED = Pattern.compile("<dcterms:(created|modified)[^>]*>[^<]*</dcterms:\\1>");

    private static final LocalDateTime ALWAYS = LocalDateTime.of(2026, 1, 1, 0, 0);

    private SteadyZip() {}

    /** A workbook that does not say when it was written. */
    public static byte[] ofWorkbook(byte[] workbook) {
        return ofWorkbook(workbook, Map.of());
    }

    /** The same, with the text of some entries put through what stands beside their names. */
    public static byte[] ofWorkbook(byte[] workbook, Map<String, UnaryOperator<String>> edited) {
        Map<String, UnaryOperator<String>> all = new HashMap<>(edited);
        all.put("docProps/core.xml", text -> CREATED.matcher(text).replaceAll(""));
        return of(workbook, all);
    }

    private static byte[] of(byte[] archive, Map<String, UnaryOperator<String>> edited) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(archive.length);
        try (ZipFile from = ZipFile.builder()
                        .setSeekableByteChannel(new SeekableInMemoryByteChannel(archive))
                        .get();
                ZipOutputStream to = new ZipOutputStream(bytes)) {
            for (ZipArchiveEntry each : Collections.list(from.getEntries())) {
                ZipEntry entry = new ZipEntry(each.getName());
                entry.setTimeLocal(ALWAYS);
                to.putNextEntry(entry);
                try (InputStream in = from.getInputStream(each)) {
                    if (edited.containsKey(each.getName())) {
                        String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
                        to.write(edited.get(each.getName()).apply(text).getBytes(StandardCharsets.UTF_8));
                    } else {
                        in.transferTo(to);
                    }
                }
                to.closeEntry();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }
}
