package evenrise.solver.rendering;

import evenrise.solver.document.Imprint;
import evenrise.solver.document.SheetWords;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;

/** Numbers of sheets: the section's own, a point, the page within it; and the index of them. The cover has section 0. */
final class SheetNumbers {
    /** A section as it was printed. */
    private record Printed(int section, String title, int firstPage, int pages) {}

    private final Imprint imprint;
    private final String kind;
    private final SheetWords words;
    private final List<Printed> printed = new ArrayList<>();

    /** @param kind of the set, behind the prefix; empty for the documents of a plan */
    SheetNumbers(Imprint imprint, String kind, SheetWords words) {
        this.imprint = imprint;
        this.kind = kind;
        this.words = words;
    }

    void begin(int section, String title) {
        printed.add(new Printed(section, title, pages(), 0));
    }

    /** So many pages more of the section that was begun last. */
    void drawn(int pages) {
        Printed last = printed.remove(printed.size() - 1);
        printed.add(new Printed(last.section(), last.title(), last.firstPage(), last.pages() + pages));
    }

    private int pages() {
        return printed.stream().mapToInt(Printed::pages).sum();
    }

    /** @param cover pages before the first section */
    List<PrintedSet.Entry> index(int cover) {
        return printed.stream()
                .map(each -> new PrintedSet.Entry(each.title(), range(each), cover + each.firstPage() + 1))
                .toList();
    }

    private String range(Printed each) {
        String first = imprint.sheet(kind, each.section(), 1);
        return each.pages() < 2
                ? first
                : words.say("imprint.to", first, imprint.sheet(kind, each.section(), each.pages()));
    }

    /** Of every page, the cover's first. */
    List<String> all(int pages) {
        List<String> all = new ArrayList<>();
        for (int i = pages() + 1; i <= pages; i++) {
            all.add(imprint.sheet(kind, 0, i - pages()));
        }
        printed.forEach(each -> {
            for (int page = 1; page <= each.pages(); page++) {
                all.add(imprint.sheet(kind, each.section(), page));
            }
        });
        return all;
    }

    /** What is on each page, the cover's first. */
    List<PrintedPage> contents(int pages) {
        List<String> titles = new ArrayList<>(Collections.nCopies(pages - pages(), "Cover"));
        printed.forEach(each -> titles.addAll(Collections.nCopies(each.pages(), each.title())));
        List<String> numbers = all(pages);
        return IntStream.range(0, pages)
                .mapToObj(i -> new PrintedPage(numbers.get(i), titles.get(i)))
                .toList();
    }
}
