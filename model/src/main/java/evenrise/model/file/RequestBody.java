package evenrise.model.file;

/** Reads what is asked over the wire with the same care as a file: every unknown key and value out of range is a problem. */
public final class RequestBody {
    private RequestBody() {}

    /**
     * @param bytes JSON
     * @param type a public record whose components say by {@link evenrise.model.contract.Field} what they take
     */
    public static <T extends Record> Reading<T> read(byte[] bytes, Class<T> type) {
        return new FileKind<>(type, "the request", "evenrise-request/1") {
            @Override
            void check(T value, Problems problems) {
                // Each field is checked by itself; whether the whole makes sense, whoever answers says.
            }
        }.read(bytes, "request.json");
    }
}
