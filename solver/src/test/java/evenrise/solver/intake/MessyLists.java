package evenrise.solver.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * Draws invented equipment lists from a seed, in the manner of people who keep one over years: notations mixed, cells left
 * open, headings and sums between rows. All figures are invented, in the range of common practice, no source.
 */
final class MessyLists {
    /**
     * A list.
     *
     * @param pieces that it holds: a row without a readable number counts for one
     * @param open cells that leave open what a piece draws
     * @param redundant pieces with feeds A and B on their row
     * @param unreadable cells that no reader can make a figure of
     */
    record Drawn(String csv, int pieces, int open, int redundant, int unreadable) {}

    private record Gear(String name, int watts, int poles, int mostPieces) {}

    private static final List<Gear> GEAR = List.of(
            new Gear("Four-channel amplifier", 1450, 2, 6),
            new Gear("Subwoofer amplifier", 1900, 2, 4),
            new Gear("Monitor amp 2ch", 700, 1, 6),
            new Gear("Powered speaker", 350, 1, 8),
            new Gear("Signal processor", 120, 1, 2),
            new Gear("Network switch 24p", 90, 1, 2),
            new Gear("Mixing console", 320, 1, 1),
            new Gear("Wireless RX quad", 45, 1, 4),
            new Gear("Media server", 650, 1, 2),
            new Gear("Video projector", 1600, 2, 2),
            new Gear("LED wall processor", 80, 1, 2),
            new Gear("Display 85 in.", 380, 1, 4),
            new Gear("Moving head spot", 780, 2, 10),
            new Gear("LED wash", 210, 1, 12),
            new Gear("Hazer", 900, 1, 2),
            new Gear("Dimmer pack", 2400, 3, 2),
            new Gear("Follow spot", 1500, 2, 2),
            new Gear("Charger for two-way radios", 60, 1, 3));

    private static final List<String> ROOMS =
            List.of("Rack room", "Booth", "Loft left", "Loft right", "Stage", "Grid", "Foyer", "Under stage");

    private final Random random;
    private final boolean isHostile;
    private final List<String> rows = new ArrayList<>();
    private int pieces;
    private int open;
    private int redundant;
    private int unreadable;
    private int number;

    private MessyLists(long seed, boolean isHostile) {
        this.random = new Random(seed);
        this.isHostile = isHostile;
    }

    /** A list of exactly so many pieces that nobody has spoilt on purpose. */
    static Drawn of(int wanted, long seed) {
        MessyLists list = new MessyLists(seed, false);
        list.head();
        while (list.pieces < wanted) {
            list.between();
            list.piece(wanted - list.pieces);
        }
        list.row("", "", "Total", "", "", String.valueOf(wanted), "", "", "", "");
        return list.drawn();
    }

    /** A list whose cells, headers and rows may be anything. */
    static Drawn hostile(long seed) {
        MessyLists list = new MessyLists(seed, true);
        list.head();
        int rows = 5 + list.random.nextInt(40);
        for (int i = 0; i < rows; i++) {
            list.between();
            list.piece(20);
        }
        return list.drawn();
    }

    private Drawn drawn() {
        return new Drawn(String.join("\n", rows) + "\n", pieces, open, redundant, unreadable);
    }

    private void head() {
        row("Heron Wharf - house inventory", "", "", "", "", "", "", "", "", "");
        row("printed for the electrician", "", "", "", "", "", "", "", "", "");
        row("", "", "", "", "", "", "", "", "", "");
        row(
                pick("Tag", "Ref", "Mark"),
                pick("Qty", "Pcs", "Count"),
                pick("Item", "Description", "Equipment"),
                pick("Location", "Room", "Where"),
                pick("Supply", "Voltage", "Volts"),
                pick("Load [W]", "Power", "Max load W", "Watts"),
                pick("Breaker", "OCPD", "CB"),
                pick("Feed", "A/B"),
                pick("Remarks", "Notes", "Comment"),
                pick("Price", "Bought", "Asset value"));
    }

    /** Headings, notes and blank rows. */
    private void between() {
        switch (random.nextInt(12)) {
            case 0 -> row("", "", pick("AUDIO", "LIGHTING", "VIDEO:", "Stage left"), "", "", "", "", "", "", "");
            case 1 -> row("", "", "", "", "", "", "", "", "", "");
            case 2 -> row("", "", "", "", "", "", "", "", pick("checked 3/4", "see drawing 12"), "");
            default -> {
                // Nothing stands here.
            }
        }
    }

    private void piece(int most) {
        switch (random.nextInt(16)) {
            case 0 -> special(most);
            default -> usual(GEAR.get(random.nextInt(GEAR.size())), most);
        }
    }

    private void usual(Gear gear, int most) {
        int count = 1 + random.nextInt(Math.min(gear.mostPieces(), most));
        boolean isLeftOpen = random.nextInt(14) == 0;
        boolean isUnreadable = !isLeftOpen && random.nextInt(40) == 0;
        open += isLeftOpen ? 1 : 0;
        unreadable += isUnreadable ? 1 : 0;
        boolean isCore = gear.name().startsWith("Signal") || gear.name().startsWith("Network");
        String volts = volts(gear.poles());
        row(
                random.nextInt(3) == 0 ? "" : tag(gear),
                quantity(count),
                gear.name(),
                random.nextInt(5) == 0 ? "" : ROOMS.get(random.nextInt(ROOMS.size())),
                volts,
                isLeftOpen
                        ? pick("TBC", "?", "by others", "see plan")
                        : isUnreadable ? pick("lots", "two plugs", "as before") : watts(gear.watts()),
                random.nextInt(4) == 0 && !volts.isEmpty() ? breaker(gear) : "",
                isCore && random.nextBoolean() ? pick("A", "B", "A+B", "dual PSU") : "",
                random.nextInt(6) == 0 ? pick("new 2019", "spare lamp in booth", "check with house") : "",
                String.valueOf(100 * random.nextInt(90)));
        String last = rows.get(rows.size() - 1);
        redundant += !isUnreadable && (last.contains("\"A+B\"") || last.contains("\"dual PSU\"")) ? count : 0;
        pieces += count;
    }

    /** What is fed in other ways than most. */
    private void special(int most) {
        int count = 1 + random.nextInt(Math.min(2, most));
        String room = ROOMS.get(random.nextInt(ROOMS.size()));
        switch (random.nextInt(6)) {
            case 0 ->
                row(
                        "",
                        quantity(count),
                        "Chain hoist 500 kg",
                        "Grid",
                        "208V 3ph",
                        pick("1 hp", "1-1/2 HP"),
                        "",
                        "",
                        "",
                        "");
            case 1 -> row("", quantity(count), "Intercom beltpack base", room, "48 VDC", "40", "", "", "", "");
            case 2 -> row("", quantity(count), "Touch panel", room, "PoE", "13", "", "", "", "");
            case 3 -> row("", quantity(count), "Exit sign", room, "120", "5", "", "", "", "");
            case 4 -> row("", quantity(count), "UPS 1500 VA", room, "120 V", "1500 VA", "", "", "", "");
            default -> row("", quantity(count), "Motorised screen", "Stage", "120", "3/4 hp", "", "", "", "");
        }
        pieces += count;
    }

    private String tag(Gear gear) {
        return gear.name().replaceAll("[^A-Z]", "") + "-" + ++number;
    }

    private String quantity(int count) {
        return count == 1 && random.nextInt(4) == 0
                ? ""
                : pick(String.valueOf(count), String.valueOf(count), "~" + count, count + " pcs", count + "x");
    }

    private String volts(int poles) {
        return switch (poles) {
            case 1 -> pick("120", "120V", "115 V", "100-240", "", "120V 1ph");
            case 2 -> pick("208", "208V 1ph", "208/1/60", "208-240V", "208 V 2p");
            default -> pick("208Y/120", "208V 3ph", "3~ 208", "208/3/60");
        };
    }

    private String watts(int watts) {
        return pick(
                String.valueOf(watts),
                watts + " W",
                watts + "W ea",
                String.format(Locale.ROOT, "%.2f kW", watts / 1000.0),
                "~" + watts,
                "max. " + watts + " W",
                watts / 2 + "-" + watts,
                "2 x " + watts / 2 + " W",
                watts + " VA");
    }

    private String breaker(Gear gear) {
        int rating = 20;
        return pick(
                rating + "/" + gear.poles(),
                rating + "A/" + gear.poles() + "P",
                gear.poles() + "P " + rating + "A",
                "C" + rating + "/" + gear.poles() + "P",
                rating + " A " + gear.poles() + "-pole");
    }

    private void row(String... cells) {
        StringBuilder line = new StringBuilder();
        for (String cell : cells) {
            String text = isHostile && random.nextInt(30) == 0 ? spoilt(cell) : cell;
            line.append(line.isEmpty() ? "" : ",")
                    .append('"')
                    .append(text.replace("\"", "\"\""))
                    .append('"');
        }
        rows.add(line.toString());
    }

    private String spoilt(String cell) {
        String turned = new StringBuilder(cell).reverse().toString();
        return pick(
                "",
                turned,
                cell + cell,
                "lots",
                "-1",
                "1e400",
                "#REF!",
                "\u202e" + cell,
                "Total",
                "A+B",
                "1,2,3/4-5",
                "3 x 16 A",
                "99999999999999999999",
                "0/0",
                "48 VDC",
                "fire alarm",
                "x".repeat(300),
                "😀 " + cell,
                "2000 W @ 208 V / 3ph 2 x 7.5 hp (TBC)",
                cell.toUpperCase(Locale.ROOT));
    }

    private String pick(String... of) {
        return of[random.nextInt(of.length)];
    }
}
