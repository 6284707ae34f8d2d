package evenrise.solver.hardship;

import java.util.List;
import java.util.Random;

/** Texts that programs trip over. */
final class HostileTexts {
    private static final List<String> TEXTS = List.of(
            "",
            " ",
            "\t",
            "0",
            "-1",
            "null",
            "true",
            "NaN",
            "A",
            "ABC",
            "=1+1",
            "=cmd|' /C calc'!A0",
            "@SUM(1)",
            "../../etc/passwd",
            "/",
            ".",
            "..",
            "a/b",
            "a\\b",
            "C:\\x",
            "con",
            "\u0000",
            "a\u0000b",
            "\u0007",
            "\u001b[31m",
            "\r\n",
            "a\nb",
            "\u2028",
            "\ud800",
            "\udfff",
            "\ufffe",
            "\uffff",
            "\ufeffx",
            "\u202e\u0661\u200f",
            "\u0627\u0644\u0639\u0631\u0628\u064a\u0629",
            "e\u0301".repeat(20),
            "\ud83d\ude00",
            "\u0130\u0131\u00df\u1e9e",
            "<script>alert(1)</script>",
            "]]>",
            "&amp;&lt;",
            "'\"`",
            "${x}",
            "{{ x }}",
            "%s%n%d",
            "a,b;c\td",
            "\u00d8",
            "supply",
            "P1",
            "L1",
            "stage",
            "#REF!",
            "1e999",
            "0x10",
            "+5",
            "1,5",
            "1.2.3",
            "12 34",
            "\u0663\u0664");

    private HostileTexts() {}

    static String any(Random chance, List<String> names) {
        return switch (chance.nextInt(12)) {
            case 0 -> "word ".repeat(3000);
            case 1 -> "x".repeat(1 + chance.nextInt(40) * chance.nextInt(1000));
            case 2 -> names.isEmpty() ? "y" : names.get(chance.nextInt(names.size())) + " ";
            case 3 -> String.valueOf((char) chance.nextInt(0x10000)).repeat(1 + chance.nextInt(5));
            case 4 -> "\u05d0".repeat(chance.nextInt(300)) + "-" + "w".repeat(300);
            default -> TEXTS.get(chance.nextInt(TEXTS.size()));
        };
    }
}
