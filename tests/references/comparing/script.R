# Reference values for tests/core/planning (power of Fisher's exact test, sheep to look at) and tests/core/counting
# (standardised shares). Run by hand: Rscript tests/references/comparing/script.R (R 4.2 stats, survey).
suppressMessages(library(survey))

# Every table that is not rarer than 1e-14, with fisher.test's p.
power <- function(n, before, after, level) {
  x <- 0:n
  chance <- outer(dbinom(x, n, before), dbinom(x, n, after))
  sum <- 0
  for (i in x) for (j in x) if (chance[i + 1, j + 1] > 1e-14) {
    p <- fisher.test(matrix(c(i, n - i, j, n - j), 2))$p.value
    if (p <= level) sum <- sum + chance[i + 1, j + 1]
  }
  sum
}

# The smallest number such that it and the next ones, a hundredth more and at least three, all have the power.
sheep <- function(before, after, wanted, level, from, to) {
  enough <- sapply(from:(to + 3), function(n) power(n, before, after, level) >= wanted)
  for (i in seq_len(to - from + 1)) if (all(enough[i:(i + 3)])) return(from + i - 1)
}

json <- function(v) paste0("[", paste(sapply(v, function(x) if (is.na(x)) "null" else format(x, digits = 17)), collapse = ", "), "]")
rows <- function(cases) paste(sapply(cases, function(k) paste0("[", json(k[[1]]), ", ", if (length(k[[2]]) == 1) format(k[[2]], digits = 17) else json(k[[2]]), "]")), collapse = ",\n")

powers <- list()
for (k in list(c(10, 0.1, 0.6), c(40, 0.1, 0.5), c(60, 0.3, 0.05), c(25, 0.3, 0.9), c(12, 0, 0.5), c(30, 0.02, 0.2), c(50, 0.2, 0.2)))
  for (level in c(0.05, 0.2)) powers[[length(powers) + 1]] <- list(c(k, level), power(k[1], k[2], k[3], level))

set.seed(1800)
for (i in 1:20) {
  k <- c(sample(5:50, 1), round(runif(2, 0, c(.4, .9)), 3)); level <- sample(c(0.05, 0.1, 0.2), 1)
  powers[[length(powers) + 1]] <- list(c(k, level), power(k[1], k[2], k[3], level))
}

numbers <- list()
for (k in list(c(0.1, 0.6, 0.8), c(0, 0.5, 0.9), c(0.5, 0.2, 0.8), c(0.3, 0.9, 0.8), c(0.05, 0.4, 0.5)))
  numbers[[length(numbers) + 1]] <- list(c(k, 0.95), sheep(k[1], k[2], k[3], 0.05, 2, 60))

# Shares of flocks turned to a common make-up by survey::svystandardize: one row a sheep.
set.seed(18)
shares <- list()
for (case in 1:30) {
  seen <- sample(5:60, 4, replace = TRUE)
  lame <- rbinom(4, seen, 0.15)
  standard <- sample(1:9, 2)
  flock <- c("A", "A", "B", "B")
  group <- c("ewes", "lambs", "ewes", "lambs")
  one <- data.frame(flock = rep(flock, seen), group = rep(group, seen), lame = unlist(mapply(function(x, n) rep(c(1, 0), c(x, n - x)), lame, seen, SIMPLIFY = FALSE)))
  design <- suppressWarnings(svydesign(ids = ~1, data = one))
  turned <- svystandardize(design, by = ~group, over = ~flock, population = standard)
  found <- svyby(~lame, ~flock, turned, svymean)
  shares[[case]] <- list(c(lame, seen, standard), as.numeric(found$lame))
}

cat("{\n\"power\": [\n", rows(powers), "\n],\n\"sheep\": [\n", rows(numbers), "\n],\n\"standard\": [\n", rows(shares), "\n]\n}\n", sep = "", file = "tests/references/comparing/values.json")
