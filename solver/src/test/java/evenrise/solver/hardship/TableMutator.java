package evenrise.solver.hardship;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/** Makes neighbours of a table of values: cells, columns and rows changed. */
final class TableMutator {
    private static final List<String> CELLS = List.of(
            "1e300",
            "-5",
            "0",
            "1e-320",
            "99999999999",
            "1.2.3-240",
            "120/208",
            "3x16A",
            "1,234.5 kW",
            "1'000",
            "12 A",
            "5%",
            "120V",
            "\"",
            "\"a\"b",
            "\"\"",
            "a\nb",
            "#DIV/0!",
            "=SUM(A1)",
            "3~",
            "L1-L2",
            "10 HP",
            "1/2 hp",
            "0x1F",
            "1e9 MW",
            "NaN",
            "Infinity",
            "∞",
            "½");

    private TableMutator() {}

    static byte[] mutated(byte[] seed, Random chance) {
        String text = new String(seed, StandardCharsets.UTF_8);
        List<List<String>> rows = new ArrayList<>();
        text.lines().forEach(line -> rows.add(new ArrayList<>(Arrays.asList(line.split("[,;]", -1)))));
        int times = 1 + chance.nextInt(6);
        for (int i = 0; i < times && !rows.isEmpty(); i++) {
            mutate(rows, chance);
        }
        String delimiter =
                chance.nextInt(4) > 0 ? "," : List.of(";", "\t", "|", ",;").get(chance.nextInt(4));
        String end =
                chance.nextInt(6) > 0 ? "\n" : List.of("\r\n", "\r", "\n\n").get(chance.nextInt(3));
        StringBuilder out = new StringBuilder();
        rows.forEach(row -> out.append(String.join(delimiter, row)).append(end));
        return out.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static void mutate(List<List<String>> rows, Random chance) {
        int at = chance.nextInt(rows.size());
        List<String> row = rows.get(at);
        int column = row.isEmpty() ? 0 : chance.nextInt(row.size());
        switch (chance.nextInt(9)) {
            case 0, 1 -> put(row, column, CELLS.get(chance.nextInt(CELLS.size())));
            case 2 -> put(row, column, HostileTexts.any(chance, row));
            case 3 -> rows.remove(at);
            case 4 -> {
                for (int i = chance.nextInt(30); i >= 0; i--) {
                    rows.add(new ArrayList<>(row));
                }
            }
            case 5 -> {
                String cell = CELLS.get(chance.nextInt(CELLS.size()));
                rows.stream().skip(1).forEach(each -> put(each, column, cell));
            }
            case 6 -> {
                for (int i = chance.nextInt(chance.nextInt(10) == 0 ? 3000 : 5); i >= 0; i--) {
                    row.add(row.isEmpty() ? "x" : row.get(column));
                }
            }
            case 7 -> put(row, column, "\"" + (row.isEmpty() ? "" : row.get(column)));
            default -> {
                List<String> other = rows.get(chance.nextInt(rows.size()));
                if (!other.isEmpty()) {
                    put(row, column, other.get(chance.nextInt(other.size())));
                }
            }
        }
    }

    private static void put(List<String> row, int column, String cell) {
        if (column < row.size()) {
            row.set(column, cell);
        } else {
            row.add(cell);
        }
    }
}
