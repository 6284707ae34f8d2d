package evenrise.model.contract;

/** Which signs of a text from a file are harmless on a screen or in a file. */
public final class Signs {
    private Signs() {}

    /**
     * Whether a sign is not seen, or acts on what shows it: a terminal escape could hide a line, a bidirectional mark could
     * turn figures round, a line break could forge a row, and what a private or future sign does nobody knows.
     */
    public static boolean isHidden(int codePoint) {
        return switch (Character.getType(codePoint)) {
            case Character.CONTROL,
                    Character.FORMAT,
                    Character.SURROGATE,
                    Character.PRIVATE_USE,
                    Character.UNASSIGNED,
                    Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR -> true;
            default -> false;
        };
    }
}
