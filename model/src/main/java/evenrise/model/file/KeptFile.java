package evenrise.model.file;

import java.nio.file.Path;

/** What the program keeps for itself between two runs, read with the same care as what people write. */
public final class KeptFile {
    private KeptFile() {}

    /**
     * Reports every problem in one pass, also those of the file itself; throws nothing.
     *
     * @param type a public record whose components say by {@link evenrise.model.contract.Field} what they take
     * @param whole what messages call it
     */
    public static <T extends Record> Reading<T> read(Path file, Class<T> type, String whole, String format) {
        return new FileKind<>(type, whole, format) {
            @Override
            void check(T value, Problems problems) {
                // Each field is checked by itself; whether it belongs to what is asked, whoever asks looks.
            }
        }.read(file);
    }

    /**
     * Writes the file as a whole or not at all.
     *
     * @throws WriteFailed with a message that names the file and the cause
     */
    public static void write(Record kept, Path file) throws WriteFailed {
        WholeFile.write(file, FileText.of(kept, Format.JSON));
    }
}
