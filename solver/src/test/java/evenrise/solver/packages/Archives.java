package evenrise.solver.packages;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveOutputStream;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipArchiveOutputStream;

/** Packs folders: same contents, same bytes. */
final class Archives {
    /** The instant that the jars' entries carry, too. */
    static final Instant THEN = Instant.parse("2026-01-01T00:00:00Z");

    private static final int PROGRAM = 0755;
    private static final int FILE = 0644;

    private Archives() {}

    /** Every file of a folder, in the order of names; nothing else lies in it. */
    static List<Path> files(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(Files::isRegularFile).sorted().toList();
        }
    }

    static int mode(Path file) {
        return Files.isExecutable(file) ? PROGRAM : FILE;
    }

    /** Unpacks into a folder with this one's name. */
    static void zip(Path folder, Path file) throws IOException {
        try (ZipArchiveOutputStream zip = new ZipArchiveOutputStream(file)) {
            for (Path each : files(folder)) {
                ZipArchiveEntry entry = new ZipArchiveEntry(folder.getFileName() + "/" + name(folder, each));
                entry.setTime(THEN.toEpochMilli());
                entry.setUnixMode(mode(each));
                entry.setSize(Files.size(each));
                zip.putArchiveEntry(entry);
                Files.copy(each, zip);
                zip.closeArchiveEntry();
            }
        }
    }

    static String name(Path folder, Path file) {
        return folder.relativize(file).toString().replace('\\', '/');
    }

    static void file(TarArchiveOutputStream tar, String name, byte[] bytes, int mode) throws IOException {
        TarArchiveEntry entry = new TarArchiveEntry("./" + name);
        entry.setSize(bytes.length);
        entry.setMode(mode);
        put(tar, entry, bytes);
    }

    static void folder(TarArchiveOutputStream tar, String name) throws IOException {
        TarArchiveEntry entry = new TarArchiveEntry("./" + name + "/");
        entry.setMode(PROGRAM);
        put(tar, entry, new byte[0]);
    }

    static void link(TarArchiveOutputStream tar, String name, String to) throws IOException {
        TarArchiveEntry entry = new TarArchiveEntry("./" + name, TarArchiveEntry.LF_SYMLINK);
        entry.setLinkName(to);
        put(tar, entry, new byte[0]);
    }

    private static void put(TarArchiveOutputStream tar, TarArchiveEntry entry, byte[] bytes) throws IOException {
        entry.setModTime(THEN.toEpochMilli());
        entry.setIds(0, 0);
        entry.setNames("root", "root");
        tar.putArchiveEntry(entry);
        tar.write(bytes);
        tar.closeArchiveEntry();
    }
}
