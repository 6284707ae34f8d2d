package evenrise.model.file;

public final class Schemas {
    public static String project() {
        throw new UnsupportedOperationException();
    }

    public static String plan() {
        throw new UnsupportedOperationException();
    }
}
