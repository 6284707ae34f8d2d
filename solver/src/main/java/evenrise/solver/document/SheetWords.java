package evenrise.solver.document;

import evenrise.model.plan.Cautions;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What sheets say in one language, by keys that every language has. The bundles are read by name and not by the machine's
 * locale, so that equal plans are equal files wherever they are printed.
 */
public final class SheetWords {
    private static final Map<SheetLanguage, SheetWords> READ = new EnumMap<>(SheetLanguage.class);

    private final SheetLanguage language;
    private final SortedMap<String, String> words;

    private SheetWords(SheetLanguage language, SortedMap<String, String> words) {
        this.language = language;
        this.words = words;
    }

    public static SheetWords in(SheetLanguage language) {
        synchronized (READ) {
            return READ.computeIfAbsent(language, SheetWords::read);
        }
    }

    private static SheetWords read(SheetLanguage language) {
        String name = "/evenrise/document/words_" + language.word() + ".properties";
        Properties read = new Properties();
        try (Reader text = new InputStreamReader(SheetWords.class.getResourceAsStream(name), StandardCharsets.UTF_8)) {
            read.load(text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        SortedMap<String, String> words = new TreeMap<>();
        read.stringPropertyNames().forEach(key -> words.put(key, read.getProperty(key)));
        return new SheetWords(language, words);
    }

    public SheetLanguage language() {
        return language;
    }

    /** All of them by their keys, as templates ask for them. */
    public Map<String, String> all() {
        return Map.copyOf(words);
    }

    /**
     * @param parts take the places of {@code {0}}, {@code {1}} and so on
     * @throws IllegalArgumentException where there is no such key
     */
    public String say(String key, Object... parts) {
        String text = words.get(key);
        if (text == null) {
            throw new IllegalArgumentException("no word for " + key + " in " + language);
        }
        StringBuilder said = new StringBuilder();
        for (int i = 0; i < text.length(); i++) {
            int end = text.charAt(i) == '{' ? text.indexOf('}', i) : -1;
            if (end < 0) {
                said.append(text.charAt(i));
            } else {
                said.append(parts[Integer.parseInt(text.substring(i + 1, end))]);
                i = end;
            }
        }
        return said.toString();
    }

    /** {@code 120/208 V, 3-phase, 4-wire}: phases and wires in words of the language. */
    public String voltage(String text) {
        int comma = text.indexOf(", ");
        return number(text.substring(0, comma)) + ", "
                + say("plate.wires-" + text.substring(comma).replaceAll("[^0-9]", ""));
    }

    /** The cautions; in another language than English with the English ones behind them, which hold. */
    public List<String> cautions() {
        List<String> said = new ArrayList<>();
        if (language != SheetLanguage.EN) {
            for (int i = 0; i < Cautions.ALL.size(); i++) {
                said.add(say("cautions." + i));
            }
        }
        said.addAll(Cautions.ALL);
        return said;
    }

    /** A number that is written with a point, as the language writes it. */
    public String number(String written) {
        return language == SheetLanguage.EN ? written : written.replace('.', ',');
    }
}
