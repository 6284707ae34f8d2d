package evenrise.model.file;

import evenrise.model.check.Shown;
import evenrise.model.contract.FormatVersion;
import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The one way from bytes to a record: take in, decode, parse, bind, check. */
abstract class FileKind<T> {
    private final Class<T> type;
    private final String whole;
    private final String format;

    FileKind(Class<T> type, String whole, String format) {
        this.type = type;
        this.whole = whole;
        this.format = format;
    }

    /** Adds what is wrong between the parts of a record whose values are each fine, or legal stand-ins. */
    abstract void check(T value, Problems problems);

    /** The tree that is bound, where it is another than the file's. */
    LoadDefaults.Applied applied(Node root) {
        return LoadDefaults.Applied.none(root);
    }

    /** What the file leaves unsaid and is left unsaid again when the record is written. */
    Silence silence(Node root, T value) {
        return Silence.NONE;
    }

    Reading<T> read(Path file) {
        try {
            return read(Input.bytes(file), file.toString());
        } catch (Unreadable e) {
            return refused(e, new byte[0]);
        }
    }

    Reading<T> read(InputStream in, String name) {
        try {
            return read(Input.bytes(in, name), name);
        } catch (Unreadable e) {
            return refused(e, new byte[0]);
        }
    }

    Reading<T> read(byte[] bytes, String name) {
        if (bytes.length > Input.MOST_BYTES) {
            return read(new ByteArrayInputStream(bytes), name);
        }
        try {
            return read(bytes, Input.text(bytes, name), name);
        } catch (Unreadable e) {
            return refused(e, bytes);
        }
    }

    private Reading<T> read(byte[] bytes, String text, String name) throws Unreadable {
        Problems problems = new Problems(whole);
        try {
            Node root = TreeReader.read(text, Format.of(name, text), name, problems);
            otherKind(root, name);
            LoadDefaults.Applied applied = applied(root);
            problems.in(applied.root(), applied.origins());
            T value = new RecordBinder(problems, isNewer(root)).bind(applied.root(), type);
            if (!problems.unread().contains("")) {
                check(value, problems);
            }
            Optional<T> sound = problems.errors().isEmpty() ? Optional.of(value) : Optional.empty();
            SideNotes notes = sound.isPresent() ? SideNotes.of(root, type).with(silence(root, value)) : SideNotes.NONE;
            return new Reading<>(sound, problems.sorted(), sha256(bytes), notes, applied.taken());
        } catch (Problems.Enough e) {
            return new Reading<>(Optional.empty(), problems.sorted(), sha256(bytes), SideNotes.NONE, List.of());
        }
    }

    /** What a text of ours says, without any check; empty where it cannot be read. */
    Optional<T> bound(String text, Format format) {
        Problems problems = new Problems(whole);
        try {
            Node root = applied(TreeReader.read(text, format, whole, problems)).root();
            problems.in(root, Map.of());
            T value = new RecordBinder(problems, isNewer(root)).bind(root, type);
            return problems.errors().isEmpty() ? Optional.of(value) : Optional.empty();
        } catch (Unreadable | Problems.Enough e) {
            return Optional.empty();
        }
    }

    /** A file of our other kind would be wrong in every line for one reason. */
    private void otherKind(Node root, String name) throws Unreadable {
        String kind = format.substring(0, format.indexOf('/') + 1);
        Node.Text stated = stated(root).orElse(null);
        if (stated != null
                && stated.text().matches("evenrise-[a-z]+/.*")
                && !stated.text().startsWith(kind)) {
            throw new Unreadable(
                    stated.line(),
                    stated.column(),
                    Input.subject(name),
                    "of format " + stated.shown(),
                    "format " + Shown.quoted(format),
                    "Maybe two file names are swapped.");
        }
    }

    /** Whether the file is of a later minor version of the format, whose new fields are left out of account. */
    private boolean isNewer(Node root) {
        return stated(root)
                .filter(text -> FormatVersion.isNewer(text.text(), format))
                .isPresent();
    }

    private static Optional<Node.Text> stated(Node root) {
        Node.Member member = root instanceof Node.Obj object ? object.members().get("format") : null;
        return member != null && member.value() instanceof Node.Text text ? Optional.of(text) : Optional.empty();
    }

    private Reading<T> refused(Unreadable e, byte[] bytes) {
        return new Reading<>(Optional.empty(), List.of(e.problem()), sha256(bytes), SideNotes.NONE, List.of());
    }

    static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
