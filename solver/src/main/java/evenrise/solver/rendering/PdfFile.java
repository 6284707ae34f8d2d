package evenrise.solver.rendering;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;

/**
 * A PDF file (ISO 32000-1) to which object after object is written and forgotten. What is no stream is packed by the hundred
 * into object streams.
 */
final class PdfFile {
    private static final int PACKED = 200;
    private static final byte[] HEAD = "%PDF-1.7\n%\u00e4\u00e5\u00f6\u00fc\n".getBytes(StandardCharsets.ISO_8859_1);

    private final ByteArrayOutputStream file = new ByteArrayOutputStream();
    /** Of each object: where it begins, or the stream that it is packed into and its place there. */
    private int[] where = new int[1024];

    private int[] place = new int[1024];
    private int last;

    private final StringBuilder heads = new StringBuilder();
    private final ByteArrayOutputStream bodies = new ByteArrayOutputStream();
    private int packed;
    private int pack;

    PdfFile() {
        file.writeBytes(HEAD);
    }

    /** Of an object that is written later, or never. */
    int number() {
        last++;
        if (last >= where.length) {
            where = Arrays.copyOf(where, 2 * last);
            place = Arrays.copyOf(place, 2 * last);
        }
        return last;
    }

    /** @param body as it is written in a file */
    void object(int number, byte[] body) {
        if (packed == 0) {
            pack = number();
        }
        heads.append(number).append(' ').append(bodies.size()).append(' ');
        bodies.writeBytes(body);
        bodies.write('\n');
        where[number] = -pack;
        place[number] = packed++;
        if (packed == PACKED) {
            close();
        }
    }

    /**
     * @param entries of its dictionary, without the length
     * @param content as the file holds it
     */
    void stream(int number, byte[] entries, InputStream content) throws IOException {
        byte[] held = content.readAllBytes();
        where[number] = file.size();
        text(number + " 0 obj\n<<");
        file.writeBytes(entries);
        text("/Length " + held.length + ">>\nstream\n");
        file.writeBytes(held);
        text("\nendstream\nendobj\n");
    }

    private void close() {
        if (packed > 0) {
            byte[] first = heads.toString().getBytes(StandardCharsets.ISO_8859_1);
            ByteArrayOutputStream plain = new ByteArrayOutputStream(first.length + bodies.size());
            plain.writeBytes(first);
            plain.writeBytes(bodies.toByteArray());
            deflated(
                    pack,
                    "/Type/ObjStm/N " + packed + "/First " + first.length + "/Filter/FlateDecode",
                    plain.toByteArray());
            heads.setLength(0);
            bodies.reset();
            packed = 0;
        }
    }

    private void deflated(int number, String entries, byte[] plain) {
        byte[] held = deflated(plain);
        where[number] = file.size();
        text(number + " 0 obj\n<<" + entries + "/Length " + held.length + ">>\nstream\n");
        file.writeBytes(held);
        text("\nendstream\nendobj\n");
    }

    private static byte[] deflated(byte[] plain) {
        ByteArrayOutputStream held = new ByteArrayOutputStream();
        Deflater deflater = new Deflater();
        try (DeflaterOutputStream out = new DeflaterOutputStream(held, deflater)) {
            out.write(plain);
        } catch (IOException e) {
            throw new IllegalStateException("memory cannot be written", e);
        } finally {
            deflater.end();
        }
        return held.toByteArray();
    }

    /** The whole. @param trailer entries beside size and type */
    byte[] finished(String trailer) {
        close();
        int table = number();
        int begin = file.size();
        where[table] = begin;
        ByteArrayOutputStream rows = new ByteArrayOutputStream();
        for (int i = 0; i <= last; i++) {
            boolean isPacked = where[i] < 0;
            rows.write(isPacked ? 2 : where[i] > 0 ? 1 : 0);
            int at = Math.abs(where[i]);
            rows.write(at >>> 24);
            rows.write(at >>> 16);
            rows.write(at >>> 8);
            rows.write(at);
            rows.write(isPacked ? place[i] : 0);
        }
        deflated(
                table,
                "/Type/XRef/Size " + (last + 1) + "/W[1 4 1]" + trailer + "/Filter/FlateDecode",
                rows.toByteArray());
        text("startxref\n" + begin + "\n%%EOF\n");
        return file.toByteArray();
    }

    private void text(String text) {
        file.writeBytes(text.getBytes(StandardCharsets.ISO_8859_1));
    }
}
