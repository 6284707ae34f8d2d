package evenrise.model.evaluation;

import java.util.function.Supplier;

/** A value that is computed when first asked for, and then kept. */
final class Once<T> {
    private Supplier<T> source;
    private T value;

    Once(Supplier<T> source) {
        this.source = source;
    }

    synchronized T get() {
        if (source != null) {
            value = source.get();
            source = null;
        }
        return value;
    }
}
