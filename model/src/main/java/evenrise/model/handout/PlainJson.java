package evenrise.model.handout;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * JSON as lists, maps, texts, numbers and truths, read and written without a library, since none of ours runs in a browser.
 * It reads what this class or the page wrote; of other faults it only says where reading ended.
 */
final class PlainJson {
    private final String text;
    private int at;

    private PlainJson(String text) {
        this.text = text;
    }

    static Object read(String text) {
        PlainJson reader = new PlainJson(text);
        Object value = reader.value();
        reader.space();
        if (reader.at < text.length()) {
            throw reader.fault();
        }
        return value;
    }

    static String text(Object value) {
        StringBuilder text = new StringBuilder();
        write(value, text);
        return text.toString();
    }

    private Object value() {
        space();
        char sign = peek();
        switch (sign) {
            case '{':
                return object();
            case '[':
                return list();
            case '"':
                return string();
            default:
                return word();
        }
    }

    private Map<String, Object> object() {
        Map<String, Object> object = new LinkedHashMap<>();
        at++;
        space();
        while (peek() != '}') {
            String key = string();
            space();
            take(':');
            object.put(key, value());
            separator('}');
        }
        at++;
        return object;
    }

    private List<Object> list() {
        List<Object> list = new ArrayList<>();
        at++;
        space();
        while (peek() != ']') {
            list.add(value());
            separator(']');
        }
        at++;
        return list;
    }

    private void separator(char end) {
        space();
        if (peek() != end) {
            take(',');
            space();
        }
    }

    private String string() {
        take('"');
        StringBuilder string = new StringBuilder();
        while (peek() != '"') {
            char sign = text.charAt(at++);
            string.append(sign == '\\' ? escaped() : sign);
        }
        at++;
        return string.toString();
    }

    private char escaped() {
        char sign = peek();
        at++;
        switch (sign) {
            case 'n':
                return '\n';
            case 't':
                return '\t';
            case 'r':
                return '\r';
            case 'b':
                return '\b';
            case 'f':
                return '\f';
            case 'u':
                at += 4;
                return (char) Integer.parseInt(text.substring(at - 4, at), 16);
            default:
                return sign;
        }
    }

    private Object word() {
        int begin = at;
        while (at < text.length() && ",]} \n\r\t".indexOf(text.charAt(at)) < 0) {
            at++;
        }
        String word = text.substring(begin, at);
        switch (word) {
            case "true":
                return Boolean.TRUE;
            case "false":
                return Boolean.FALSE;
            case "null":
                return null;
            default:
                return Double.valueOf(word);
        }
    }

    private void space() {
        while (at < text.length() && text.charAt(at) <= ' ') {
            at++;
        }
    }

    private char peek() {
        if (at >= text.length()) {
            throw fault();
        }
        return text.charAt(at);
    }

    private void take(char sign) {
        if (peek() != sign) {
            throw fault();
        }
        at++;
    }

    private IllegalArgumentException fault() {
        return new IllegalArgumentException("no JSON from sign " + at);
    }

    private static void write(Object value, StringBuilder text) {
        if (value instanceof Map<?, ?> object) {
            text.append('{');
            object.forEach((key, entry) -> {
                separate('{', text);
                quote(key.toString(), text);
                text.append(':');
                write(entry, text);
            });
            text.append('}');
        } else if (value instanceof List<?> list) {
            text.append('[');
            list.forEach(entry -> {
                separate('[', text);
                write(entry, text);
            });
            text.append(']');
        } else if (value instanceof String string) {
            quote(string, text);
        } else if (value instanceof Double number) {
            text.append(
                    number == Math.rint(number) && Math.abs(number) < 1e15
                            ? Long.toString(number.longValue())
                            : number.toString());
        } else {
            text.append(value);
        }
    }

    private static void separate(char begin, StringBuilder text) {
        if (text.charAt(text.length() - 1) != begin) {
            text.append(',');
        }
    }

    private static void quote(String string, StringBuilder text) {
        text.append('"');
        for (int i = 0; i < string.length(); i++) {
            char sign = string.charAt(i);
            if (sign == '"' || sign == '\\') {
                text.append('\\').append(sign);
            } else if (sign < ' ' || sign == '<' || sign >= 0x7f) {
                String digits = Integer.toHexString(sign);
                text.append("\\u").append("0000", 0, 4 - digits.length()).append(digits);
            } else {
                text.append(sign);
            }
        }
        text.append('"');
    }
}
