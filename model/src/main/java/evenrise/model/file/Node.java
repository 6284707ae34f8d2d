package evenrise.model.file;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A value of a file with the place where it begins; lines and columns from 1. */
sealed interface Node {
    int line();

    int column();

    /** What a message calls the value. */
    String shown();

    /** Members by key, in the order of the file; of a key that is given twice, the first. */
    record Obj(int line, int column, Map<String, Member> members) implements Node {
        Obj(int line, int column) {
            this(line, column, new LinkedHashMap<>());
        }

        @Override
        public String shown() {
            return "an object";
        }
    }

    /** A key with its own place, and its value. */
    record Member(int line, int column, Node value) {}

    record Arr(int line, int column, List<Node> entries) implements Node {
        @Override
        public String shown() {
            return "a list";
        }
    }

    record Text(int line, int column, String text) implements Node {
        @Override
        public String shown() {
            return evenrise.model.check.Shown.quoted(text);
        }
    }

    /** A number: an Integer, Long, BigInteger or Double as written; {@code text} is how. */
    record Num(int line, int column, Number number, String text) implements Node {
        @Override
        public String shown() {
            return evenrise.model.check.Shown.plain(text);
        }
    }

    record Bool(int line, int column, boolean truth) implements Node {
        @Override
        public String shown() {
            return Boolean.toString(truth);
        }
    }

    record Null(int line, int column) implements Node {
        @Override
        public String shown() {
            return "null";
        }
    }
}
