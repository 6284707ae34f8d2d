package evenrise.model.estimate;

import evenrise.model.project.PriceBreak;
import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Unit prices of one kind by how many of it there are: all cost what the last break that is reached says. */
record UnitPrices(double price, List<PriceBreak> breaks) {
    /** Empty where there is none: a price of 0 is the default of some files and counts as none. */
    Optional<BigDecimal> at(long count) {
        double unit = breaks.stream()
                .filter(each -> each.from() <= count)
                .max(Comparator.comparingInt(PriceBreak::from))
                .map(PriceBreak::price)
                .orElse(price);
        return unit > 0 ? Optional.of(BigDecimal.valueOf(unit)) : Optional.empty();
    }

    /** Of any number of them. */
    Optional<BigDecimal> least() {
        return all().min(Comparator.naturalOrder());
    }

    /** Those that there are. */
    Stream<BigDecimal> all() {
        return Stream.concat(Stream.of(price), breaks.stream().map(PriceBreak::price))
                .filter(each -> each > 0)
                .map(BigDecimal::valueOf);
    }
}
