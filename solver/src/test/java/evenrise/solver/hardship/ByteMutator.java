package evenrise.solver.hardship;

import java.io.ByteArrayOutputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Random;

/** Makes neighbours of a file that knows nothing of its form: bytes changed, cut, doubled, other encodings. */
final class ByteMutator {
    private static final byte[][] PIECES = {
        "\0".getBytes(StandardCharsets.UTF_8),
        "\n".getBytes(StandardCharsets.UTF_8),
        "\"".getBytes(StandardCharsets.UTF_8),
        "{".getBytes(StandardCharsets.UTF_8),
        "]".getBytes(StandardCharsets.UTF_8),
        "- ".getBytes(StandardCharsets.UTF_8),
        ": ".getBytes(StandardCharsets.UTF_8),
        "&a *a ".getBytes(StandardCharsets.UTF_8),
        "!!set x".getBytes(StandardCharsets.UTF_8),
        "? ".getBytes(StandardCharsets.UTF_8),
        "|\n".getBytes(StandardCharsets.UTF_8),
        "---\n".getBytes(StandardCharsets.UTF_8),
        "<<: ".getBytes(StandardCharsets.UTF_8),
        "\u2028".getBytes(StandardCharsets.UTF_8),
        "#".getBytes(StandardCharsets.UTF_8),
        "\t".getBytes(StandardCharsets.UTF_8),
        "%YAML 9\n".getBytes(StandardCharsets.UTF_8),
        "9999999999999999".getBytes(StandardCharsets.UTF_8),
        {(byte) 0xff, (byte) 0xfe},
        {(byte) 0xef, (byte) 0xbb, (byte) 0xbf},
        {(byte) 0xc0, (byte) 0x80},
        {(byte) 0xed, (byte) 0xa0, (byte) 0x80}
    };

    private ByteMutator() {}

    static byte[] mutated(byte[] seed, Random chance) {
        byte[] bytes = seed;
        int times = 1 + chance.nextInt(4);
        for (int i = 0; i < times; i++) {
            bytes = once(bytes, chance);
        }
        return bytes;
    }

    private static byte[] once(byte[] bytes, Random chance) {
        if (bytes.length == 0) {
            return PIECES[chance.nextInt(PIECES.length)];
        }
        int at = chance.nextInt(bytes.length);
        int end = Math.min(bytes.length, at + 1 + chance.nextInt(chance.nextInt(20) == 0 ? bytes.length : 20));
        return switch (chance.nextInt(9)) {
            case 0 -> {
                byte[] copy = bytes.clone();
                copy[at] ^= (byte) (1 << chance.nextInt(8));
                yield copy;
            }
            case 1 -> Arrays.copyOf(bytes, at);
            case 2 -> Arrays.copyOfRange(bytes, at, bytes.length);
            case 3 -> joined(Arrays.copyOf(bytes, at), PIECES[chance.nextInt(PIECES.length)], tail(bytes, at));
            case 4 -> joined(Arrays.copyOf(bytes, at), tail(bytes, end));
            case 5 -> joined(Arrays.copyOf(bytes, end), tail(bytes, at));
            case 6 ->
                joined(
                        Arrays.copyOf(bytes, at),
                        repeated(Arrays.copyOfRange(bytes, at, end), 1 + chance.nextInt(500)),
                        tail(bytes, end));
            case 7 ->
                chance.nextInt(4) == 0 ? recoded(bytes, chance) : joined(PIECES[chance.nextInt(PIECES.length)], bytes);
            default -> joined(Arrays.copyOf(bytes, at), PIECES[chance.nextInt(PIECES.length)], tail(bytes, end));
        };
    }

    private static byte[] recoded(byte[] bytes, Random chance) {
        Charset[] sets = {
            StandardCharsets.UTF_16, StandardCharsets.UTF_16LE, StandardCharsets.ISO_8859_1, Charset.forName("UTF-32")
        };
        return new String(bytes, StandardCharsets.UTF_8).getBytes(sets[chance.nextInt(sets.length)]);
    }

    private static byte[] tail(byte[] bytes, int from) {
        return Arrays.copyOfRange(bytes, Math.min(from, bytes.length), bytes.length);
    }

    private static byte[] repeated(byte[] piece, int times) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        for (int i = 0; i < times; i++) {
            out.writeBytes(piece);
        }
        return out.toByteArray();
    }

    private static byte[] joined(byte[]... parts) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        for (byte[] each : parts) {
            out.writeBytes(each);
        }
        return out.toByteArray();
    }
}
