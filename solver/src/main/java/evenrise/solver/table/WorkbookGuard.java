package evenrise.solver.table;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;

/**
 * Unpacks a workbook once and keeps nothing of it, before a parser takes it into memory: a small file can unpack to
 * gigabytes, whatever its directory says, and a parser makes room for every column up to that of a single cell.
 */
final class WorkbookGuard {
    private static final Pattern CELL = Pattern.compile("<(?:\\w+:)?c\\s");

    /** A cell beyond the last column that a sheet can have, XFD; or one whose place is spelt so that we cannot tell. */
    private static final Pattern IMPOSSIBLE_CELL = Pattern.compile(
            "<(?:\\w+:)?c\\s.*[\"'](?:[^\"']*&|\\s*\\$?[A-Za-z]{4,}\\$?[0-9])[^\"']*.*", Pattern.DOTALL);

    /** Longer tags of cells are nowhere written. */
    private static final int LONGEST_TAG = 2_000;

    private final long mostBytes;
    private final StringBuilder tag = new StringBuilder();
    private boolean isInTag;
    private long bytes;

    private WorkbookGuard(long mostBytes) {
        this.mostBytes = mostBytes;
    }

    /** @throws IOException with a message for the user where it must not be read */
    static long unpackedBytes(Path file, long mostBytes) throws IOException {
        WorkbookGuard guard = new WorkbookGuard(mostBytes);
        try (ZipFile zip = new ZipFile(file.toFile())) {
            for (ZipEntry each : zip.stream().toList()) {
                try (InputStream in = zip.getInputStream(each)) {
                    guard.part(in, each.getName().toLowerCase(Locale.ROOT).endsWith(".xml"));
                }
            }
            return guard.bytes;
        } catch (Refused e) {
            throw e;
        } catch (IOException | RuntimeException e) {
            // What is thrown for a broken archive is not all declared.
            throw new IOException(
                    "it is no whole workbook. Maybe open it in a spreadsheet program and save it anew", e);
        }
    }

    private static final class Refused extends IOException {
        private static final long serialVersionUID = 1;

        Refused(String message) {
            super(message);
        }
    }

    private void part(InputStream in, boolean isXml) throws IOException {
        isInTag = false;
        byte[] block = new byte[1 << 16];
        for (int read = in.read(block); read >= 0; read = in.read(block)) {
            bytes += read;
            if (bytes > mostBytes) {
                throw new Refused("it is a workbook of more than " + (mostBytes >> 20)
                        + " MiB when unpacked, too large for an equipment list");
            }
            for (int i = 0; isXml && i < read; i++) {
                take((char) (block[i] & 0xff));
            }
        }
    }

    /** UTF-16 has a NUL beside each letter that counts here. */
    private void take(char c) throws Refused {
        if (c == '<') {
            isInTag = true;
            tag.setLength(0);
        }
        if (!isInTag || c == 0) {
            return;
        }
        tag.append(c);
        if (c == '>' || tag.length() > LONGEST_TAG) {
            isInTag = false;
            boolean isLong = c != '>' && CELL.matcher(tag).lookingAt();
            if (isLong || IMPOSSIBLE_CELL.matcher(tag).matches()) {
                throw new Refused("it is a workbook with a cell at an impossible place. Maybe open it in a spreadsheet"
                        + " program and save it anew");
            }
        }
    }
}
