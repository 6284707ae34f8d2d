package evenrise.solver.rendering;

import evenrise.solver.document.Imprint;
import evenrise.solver.document.SheetWords;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiFunction;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Numbers of sheets: the section's own, a point, the page within it; and the index of them. The cover has section 0. A page
 * that sections share has the number of each.
 */
final class SheetNumbers {
    /** A section as it was printed. */
    private record Printed(int section, String title, int firstPage, int pages) {
        int end() {
            return firstPage + pages;
        }
    }

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

    /** The next section that is printed, on the pages from this one, counted from 0. */
    void add(int section, String title, int firstPage, int pages) {
        printed.add(new Printed(section, title, firstPage, pages));
    }

    private int pages() {
        return printed.stream().mapToInt(Printed::end).max().orElse(0);
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
        return of(
                pages,
                page -> imprint.sheet(kind, 0, page + 1),
                (each, page) -> imprint.sheet(kind, each.section(), page - each.firstPage() + 1));
    }

    /** What is on each page, the cover's first. */
    List<PrintedPage> contents(int pages) {
        List<String> titles = of(pages, any -> "Cover", (each, page) -> each.title());
        List<String> numbers = all(pages);
        return IntStream.range(0, pages)
                .mapToObj(i -> new PrintedPage(numbers.get(i), titles.get(i)))
                .toList();
    }

    private List<String> of(int pages, IntFunction<String> ofCover, BiFunction<Printed, Integer, String> ofPage) {
        int cover = pages - pages();
        List<String> all = new ArrayList<>();
        for (int i = 0; i < cover; i++) {
            all.add(ofCover.apply(i));
        }
        for (int i = 0; i < pages(); i++) {
            int page = i;
            all.add(printed.stream()
                    .filter(each -> each.firstPage() <= page && page < each.end())
                    .map(each -> ofPage.apply(each, page))
                    .collect(Collectors.joining(", ")));
        }
        return all;
    }
}
