package evenrise.solver.intake;

import evenrise.solver.table.HeaderWords;
import evenrise.solver.table.ReadTable;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/** Where a piece is: its room and rack, which go on from row to row, its shutdown zone, its feed. */
final class Whereabouts {
    private static final Pattern BOTH = Pattern.compile("(FEEDS? |PSUS? )?[A1]\\s*([+&/,;]|AND|UND|ET|Y|-)?\\s*[B2]"
            + "|BOTH|DUAL( (PSU|FEED|SUPPLY|CORDED|CORD))?|REDUNDANT|BEIDE|DOUBLE|DOBLE|2 ?X? ?PSUS?|2N");

    private final CellReader cells;
    private final Notices notices;
    private final Map<Meaning, String> above = new EnumMap<>(Meaning.class);
    private final Set<String> rooms = new HashSet<>();

    Whereabouts(CellReader cells, Notices notices) {
        this.cells = cells;
        this.notices = notices;
    }

    /** Goes on to a row: a merged or omitted cell of room and rack says what the row above says. */
    void at(ReadTable.Row row) {
        for (Meaning meaning : List.of(Meaning.ROOM, Meaning.RACK)) {
            String own = cells.text(row, meaning);
            if (!own.isEmpty()) {
                above.put(meaning, own);
                if (meaning == Meaning.ROOM) {
                    rooms.add(HeaderWords.words(own));
                }
                if (meaning == Meaning.ROOM && cells.text(row, Meaning.RACK).isEmpty()) {
                    above.remove(Meaning.RACK);
                }
            } else if (above.containsKey(meaning) && cells.hasColumn(meaning)) {
                notices.assume("an empty " + meaning.word() + " goes on from the row above");
            }
        }
    }

    /** Goes on below a heading, which stands for the room where the list has no column for that. */
    void below(String heading) {
        if (!cells.hasColumn(Meaning.ROOM)) {
            notices.assume("a heading between rows is the room of what follows");
            above.put(Meaning.ROOM, heading.replaceAll("[:\\s]+$", ""));
            rooms.add(HeaderWords.words(heading));
        }
    }

    /** Room and rack of the row gone to. */
    String room() {
        String room = above.getOrDefault(Meaning.ROOM, "");
        String rack = above.getOrDefault(Meaning.RACK, "");
        return CellReader.cut(room.isEmpty() || rack.isEmpty() ? room + rack : room + ", " + rack);
    }

    /** All rooms gone to, in plain words. */
    Set<String> rooms() {
        return Set.copyOf(rooms);
    }

    /** Room of the row gone to, without its rack; empty where there is none. */
    String roomAlone() {
        return above.getOrDefault(Meaning.ROOM, "");
    }

    /** Rack of the row gone to; empty where there is none. */
    String rack() {
        return CellReader.cut(above.getOrDefault(Meaning.RACK, ""));
    }

    String zone(ReadTable.Row row) {
        String own = CellReader.isSilent(cells.cell(row, Meaning.ZONE)) ? "" : cells.text(row, Meaning.ZONE);
        if (own.isEmpty()) {
            notices.assume("a row without a zone is in no shutdown group: it holds on an emergency");
        }
        return CellReader.cut(own);
    }

    /** Whether a text says that both feeds are meant. */
    static boolean isBoth(String text) {
        return BOTH.matcher(text.strip().toUpperCase(Locale.ROOT)).matches();
    }

    /** A, B or both ({@link Supplies#BOTH}); empty where it is not redundant. */
    String feed(ReadTable.Row row) {
        String own = cells.text(row, Meaning.FEED).toUpperCase(Locale.ROOT);
        boolean isOne = own.matches("([A-Z]+ ?)?[AB]");
        if (isBoth(own) || isOne) {
            String feed = isOne ? own.substring(own.length() - 1) : Supplies.BOTH;
            cells.read(row, Meaning.FEED, isOne ? "feed " + feed : "two loads, A and B", ReadValue.How.STATED);
            return feed;
        }
        if (!own.isEmpty() && !own.matches("[-–—]+|N|NO|NONE|SINGLE|NEIN|NON")) {
            cells.read(row, Meaning.FEED, "not redundant", ReadValue.How.GUESSED);
            notices.assume("feed '" + CellReader.cut(own) + "' is neither A nor B: not redundant");
        }
        return "";
    }
}
