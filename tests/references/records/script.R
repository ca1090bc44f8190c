# Random records for the functions that count, date and rank records, worked out by base R and stats: cases by the gap
# between sorted days (diff), repeat animals (tapply), days and shares of treatment (median, mean), ranks (the statistic of
# wilcox.test for one flock against the others), clear days on the calendar (as.Date), ml and mg by product (tapply).
# Seed 20. Run by hand: Rscript tests/references/records/script.R
suppressMessages(library(jsonlite))
here <- dirname(sub("--file=", "", grep("--file=", commandArgs(), value = TRUE)))
set.seed(20)
sets <- function(n, make) lapply(seq_len(n), function(i) make())
origin <- as.Date("1899-12-30")

# A record more than so many days after the animal's record before it begins a case.
begun_by <- function(days, gap) { days <- sort(days); days[c(TRUE, diff(days) > gap)] }
cases <- sets(40, function() {
  n <- sample(c(1, 5, 30, 80), 1); gap <- sample(c(0, 7, 14, 28), 1)
  animal <- sample(12, n, TRUE); day <- 45000 + sample(200, n, TRUE)
  begun <- tapply(day, animal, begun_by, gap = gap, simplify = FALSE)
  list(list(animals = I(animal), dates = I(day), gap = gap),
       unlist(lapply(names(begun), function(a) lapply(begun[[a]], function(d) c(as.integer(a), d))), recursive = FALSE))
})

repeats <- sets(40, function() {
  n <- sample(c(5, 30, 80), 1); gap <- sample(c(7, 14), 1); least <- sample(2:3, 1)
  animal <- sample(9, n, TRUE); day <- 45000 + sample(365, n, TRUE); from <- 45000 + sample(100, 1)
  count <- tapply(day, animal, function(d) sum(begun_by(d, gap) >= from))
  count <- count[count >= least]
  list(list(animals = I(animal), dates = I(day), gap = gap, atLeast = least, from = from),
       lapply(seq_along(count), function(i) c(as.integer(names(count)[i]), as.integer(count[i]))))
})

lags <- sets(40, function() {
  n <- sample(2:40, 1); seen <- 45000 + sample(60, n, TRUE); within <- sample(0:5, 1); asof <- 45100
  treated <- ifelse(runif(n) < .8, seen + rgeom(n, .3), NA); treated[1] <- seen[1]; waited <- treated - seen
  list(list(seen = I(seen), treated = I(treated), within = within, asOf = asof),
       c(median(waited, na.rm = TRUE), mean(!is.na(waited) & waited <= within), sum(is.na(treated))))
})

# W counts the others that are better or worse than the one, ties half.
ranks <- sets(40, function() {
  others <- sample(c(.01, .02, .03, .05, .08, .13), sample(1:30, 1), TRUE); own <- sample(c(.02, .03, .04), 1)
  w <- suppressWarnings(wilcox.test(others, own, exact = FALSE)$statistic)
  list(list(own = own, others = I(others)), as.numeric(w) / length(others))
})

# The withdrawal period is of whole days after the day of treatment; it is free on the next (Finnish Medicines Agency: after
# a 6-day period the 7th day is the first free one). Calendar days over leap years and centuries.
clear <- sets(60, function() {
  day <- as.Date("1990-01-01") + sample(36000, 1); days <- sample(c(0, 1, 6, 28, 365), 1)
  free <- if (days == 0) day else seq(day, by = "day", length.out = days + 2)[days + 2]
  list(c(as.numeric(day - origin), days), c(as.numeric(free - origin), as.integer(format(free, "%Y%m%d"))))
})

use <- sets(30, function() {
  n <- sample(1:60, 1); product <- sample(c("A", "B", "C"), n, TRUE); ml <- sample(200, n, TRUE) / 10
  strength <- c(A = 100, B = 200, C = 40)[product]; ewes <- sample(500, 1); lambs <- sample(0:700, 1)
  by <- function(x) tapply(x, factor(product, unique(product)), sum)
  pcu <- 75 * ewes + 20 * lambs
  list(list(products = I(product), ml = I(ml), strength = I(unname(strength)), ewes = ewes, lambs = lambs),
       unname(cbind(c(by(rep(1, n)), n), c(by(ml), sum(ml)), c(by(ml * strength), sum(ml * strength)), c(by(ml * strength), sum(ml * strength)) / pcu)))
})

out <- list(`made with` = list(paste0("R ", getRversion())), cases = cases, repeats = repeats, lags = lags, ranks = ranks, clear = clear, use = use)
write(toJSON(out, auto_unbox = TRUE, digits = NA, na = "null"), file.path(here, "values.json"))
