package evenrise.solver.packages;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.zip.GZIPOutputStream;
import org.apache.commons.compress.archivers.ar.ArArchiveEntry;
import org.apache.commons.compress.archivers.ar.ArArchiveOutputStream;
import org.apache.commons.compress.archivers.tar.TarArchiveOutputStream;

/**
 * A Debian package: an ar archive of the format's version, what the package says of itself, and its files (deb(5)). The
 * program lies in one folder of /usr/lib; command, manual page and completion where Debian looks for them.
 *
 * @param image the program's folder with its runtime
 * @param architecture as Debian names it
 */
record DebPackage(Path image, String version, String architecture) {
    private static final String HOME = "usr/lib/evenrise";
    private static final int PROGRAM = 0755;
    private static final int FILE = 0644;

    void write(Path file) throws IOException {
        byte[] data = data();
        try (ArArchiveOutputStream ar = new ArArchiveOutputStream(Files.newOutputStream(file))) {
            member(ar, "debian-binary", "2.0\n".getBytes(StandardCharsets.US_ASCII));
            member(ar, "control.tar.gz", control());
            member(ar, "data.tar.gz", data);
        }
    }

    private static void member(ArArchiveOutputStream ar, String name, byte[] bytes) throws IOException {
        ar.putArchiveEntry(new ArArchiveEntry(name, bytes.length, 0, 0, 0100644, Archives.THEN.getEpochSecond()));
        ar.write(bytes);
        ar.closeArchiveEntry();
    }

    private byte[] control() throws IOException {
        long kilobytes = 0;
        for (Path each : Archives.files(image)) {
            kilobytes += Files.size(each) / 1024 + 1;
        }
        String text = Files.readString(Path.of("src/dist/deb/control"))
                .replace("VERSION", version)
                .replace("ARCHITECTURE", architecture)
                .replace("KILOBYTES", Long.toString(kilobytes));
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (TarArchiveOutputStream tar = tar(bytes)) {
            Archives.file(tar, "control", text.getBytes(StandardCharsets.UTF_8), FILE);
            for (String script : new String[] {"postinst", "prerm"}) {
                Archives.file(tar, script, Files.readAllBytes(Path.of("src/dist/deb", script)), PROGRAM);
            }
        }
        return bytes.toByteArray();
    }

    private byte[] data() throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (TarArchiveOutputStream tar = tar(bytes)) {
            Set<String> folders = new TreeSet<>();
            for (Path each : Archives.files(image)) {
                String name = HOME + "/" + Archives.name(image, each);
                folders(tar, name, folders);
                Archives.file(tar, name, Files.readAllBytes(each), Archives.mode(each));
            }
            add(tar, folders, "usr/share/man/man1/evenrise.1.gz", zipped(image.resolve("share/evenrise.1")));
            add(
                    tar,
                    folders,
                    "usr/share/bash-completion/completions/evenrise",
                    Files.readAllBytes(image.resolve("share/evenrise.bash")));
            add(tar, folders, "usr/share/doc/evenrise/copyright", Files.readAllBytes(image.resolve("NOTICE")));
            add(tar, folders, "usr/share/doc/evenrise/changelog.gz", zipped(image.resolve("changelog.md")));
            folders(tar, "usr/bin/evenrise", folders);
            Archives.link(tar, "usr/bin/evenrise", "../lib/evenrise/bin/evenrise");
        }
        return bytes.toByteArray();
    }

    private static void add(TarArchiveOutputStream tar, Set<String> folders, String name, byte[] bytes)
            throws IOException {
        folders(tar, name, folders);
        Archives.file(tar, name, bytes, FILE);
    }

    private static void folders(TarArchiveOutputStream tar, String name, Set<String> known) throws IOException {
        for (int slash = name.indexOf('/'); slash > 0; slash = name.indexOf('/', slash + 1)) {
            if (known.add(name.substring(0, slash))) {
                Archives.folder(tar, name.substring(0, slash));
            }
        }
    }

    private static TarArchiveOutputStream tar(OutputStream to) throws IOException {
        TarArchiveOutputStream tar = new TarArchiveOutputStream(new GZIPOutputStream(to), "UTF-8");
        tar.setLongFileMode(TarArchiveOutputStream.LONGFILE_GNU);
        return tar;
    }

    private static byte[] zipped(Path file) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (GZIPOutputStream zip = new GZIPOutputStream(bytes)) {
            Files.copy(file, zip);
        }
        return bytes.toByteArray();
    }
}
