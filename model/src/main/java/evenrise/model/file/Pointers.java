package evenrise.model.file;

/** JSON pointers (RFC 6901). */
final class Pointers {
    private Pointers() {}

    static String child(String pointer, String key) {
        return pointer + "/" + key.replace("~", "~0").replace("/", "~1");
    }

    static String child(String pointer, int index) {
        return pointer + "/" + index;
    }

    static String parent(String pointer) {
        return pointer.substring(0, pointer.lastIndexOf('/'));
    }

    static String last(String pointer) {
        String last = pointer.substring(pointer.lastIndexOf('/') + 1);
        return last.replace("~1", "/").replace("~0", "~");
    }
}
