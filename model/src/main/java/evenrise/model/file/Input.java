package evenrise.model.file;

import evenrise.model.check.Shown;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CoderResult;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Locale;

/** Takes in the bytes of a file, up to a limit, and their text. */
final class Input {
    /** More bytes than this are refused before they are parsed: 64 MiB, some forty times a plant of 5,000 loads. */
    static final int MOST_BYTES = 64 << 20;

    private static final String WANTED = "a text file in JSON or YAML, UTF-8";

    private Input() {}

    static byte[] bytes(Path path) throws Unreadable {
        String subject = subject(path.toString());
        try {
            if (Files.isDirectory(path)) {
                throw new Unreadable(0, 0, subject, "a directory", WANTED, "Maybe name a file in it.");
            }
            if (Files.isRegularFile(path) && Files.size(path) > MOST_BYTES) {
                throw tooLarge(subject, Files.size(path) + " bytes");
            }
            try (InputStream in = Files.newInputStream(path)) {
                return bytes(in, path.toString());
            }
        } catch (NoSuchFileException e) {
            throw new Unreadable(0, 0, subject, "missing", WANTED, "Maybe the name or the folder is another.");
        } catch (AccessDeniedException e) {
            throw new Unreadable(0, 0, subject, "closed to you", "permission to read it", "");
        } catch (IOException e) {
            throw failed(subject, e);
        }
    }

    static byte[] bytes(InputStream in, String name) throws Unreadable {
        try {
            byte[] bytes = in.readNBytes(MOST_BYTES + 1);
            if (bytes.length > MOST_BYTES) {
                throw tooLarge(subject(name), "over " + MOST_BYTES + " bytes");
            }
            return bytes;
        } catch (IOException e) {
            throw failed(subject(name), e);
        }
    }

    /** The text without a byte order mark. */
    static String text(byte[] bytes, String name) throws Unreadable {
        CharBuffer chars = CharBuffer.allocate(bytes.length);
        ByteBuffer in = ByteBuffer.wrap(bytes);
        CoderResult result = StandardCharsets.UTF_8.newDecoder().decode(in, chars, true);
        String text = chars.flip().toString();
        if (result.isError()) {
            String bad = String.format(Locale.ROOT, "0x%02X", bytes[in.position()]);
            throw unfit(text, text.length(), name, "not UTF-8: byte " + bad + " at offset " + in.position());
        }
        int nul = text.indexOf('\0');
        if (nul >= 0) {
            throw unfit(text, nul, name, "binary: it has a NUL character");
        }
        text = text.startsWith("\uFEFF") ? text.substring(1) : text;
        if (text.isBlank()) {
            throw new Unreadable(0, 0, subject(name), "empty", WANTED, "Maybe an earlier write was cut short.");
        }
        return text;
    }

    static String subject(String name) {
        return name.equals("-") ? "standard input" : "file " + Shown.quoted(name);
    }

    private static Unreadable unfit(String text, int at, String name, String value) {
        int line =
                1 + (int) text.substring(0, at).chars().filter(c -> c == '\n').count();
        int column = at - text.lastIndexOf('\n', at - 1);
        return new Unreadable(
                line, column, subject(name), value, WANTED, "Maybe it is another file, or saved as UTF-16.");
    }

    private static Unreadable tooLarge(String subject, String size) {
        String most = "at most " + MOST_BYTES + " bytes (64 MiB)";
        return new Unreadable(0, 0, subject, size + " long", most, "Maybe it is another file.");
    }

    private static Unreadable failed(String subject, IOException e) {
        String why = e.getMessage() == null ? e.getClass().getSimpleName() : Shown.plain(e.getMessage());
        return new Unreadable(0, 0, subject, "unreadable (" + why + ")", WANTED, "");
    }
}
