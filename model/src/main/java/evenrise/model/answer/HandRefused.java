package evenrise.model.answer;

/** A load cannot be put where a hand wants it; the message says why and what would help. */
public final class HandRefused extends RuntimeException {
    private static final long serialVersionUID = 1;

    public HandRefused(String message) {
        super(message);
    }
}
