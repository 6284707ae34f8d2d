package evenrise.solver.rendering;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.Collections;
import java.util.function.UnaryOperator;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.apache.commons.compress.utils.SeekableInMemoryByteChannel;

/** An archive that is the same for the same contents, whenever it is made: no entry carries a time of its own. */
final class SteadyZip {
    private static final LocalDateTime ALWAYS = LocalDateTime.of(2026, 1, 1, 0, 0);

    private SteadyZip() {}

    /** The same archive without times, with the text of the entry {@code name} put through {@code edited}. */
    static byte[] of(byte[] archive, String name, UnaryOperator<String> edited) {
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
                    if (each.getName().equals(name)) {
                        String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
                        to.write(edited.apply(text).getBytes(StandardCharsets.UTF_8));
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
