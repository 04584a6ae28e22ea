;; The inner loops of the plan, two numbers to a register. `npm run kernel` writes kernelBytes.ts from this page.
;; Places are counted in numbers of 8 bytes, those of lags in numbers of 4 bytes.
(module
  (import "workspace" "memory" (memory 1))

  ;; out[j] = sum over m of filter[m] * values[j + step * m] for j = 0 ... count - 1, eight j at a time: up to seven numbers
  ;; after the last are written too.
  (func $correlate (export "correlate")
    (param $out i32) (param $count i32) (param $filter i32) (param $length i32) (param $values i32) (param $step i32)
    (local $stop i32) (local $end i32) (local $f i32) (local $v i32)
    (local $s v128) (local $a v128) (local $b v128) (local $c v128) (local $d v128)
    (if (i32.le_s (local.get $count) (i32.const 0)) (then (return)))
    (local.set $out (i32.shl (local.get $out) (i32.const 3)))
    (local.set $filter (i32.shl (local.get $filter) (i32.const 3)))
    (local.set $values (i32.shl (local.get $values) (i32.const 3)))
    (local.set $step (i32.shl (local.get $step) (i32.const 3)))
    (local.set $stop (i32.add (local.get $out) (i32.shl (local.get $count) (i32.const 3))))
    (local.set $end (i32.add (local.get $filter) (i32.shl (local.get $length) (i32.const 3))))
    (loop $eight
      (local.set $a (v128.const f64x2 0 0))
      (local.set $b (v128.const f64x2 0 0))
      (local.set $c (v128.const f64x2 0 0))
      (local.set $d (v128.const f64x2 0 0))
      (local.set $f (local.get $filter))
      (local.set $v (local.get $values))
      (if (i32.lt_u (local.get $f) (local.get $end)) (then
        (loop $product
          (local.set $s (v128.load64_splat (local.get $f)))
          (local.set $a (f64x2.add (local.get $a) (f64x2.mul (local.get $s) (v128.load (local.get $v)))))
          (local.set $b (f64x2.add (local.get $b) (f64x2.mul (local.get $s) (v128.load offset=16 (local.get $v)))))
          (local.set $c (f64x2.add (local.get $c) (f64x2.mul (local.get $s) (v128.load offset=32 (local.get $v)))))
          (local.set $d (f64x2.add (local.get $d) (f64x2.mul (local.get $s) (v128.load offset=48 (local.get $v)))))
          (local.set $f (i32.add (local.get $f) (i32.const 8)))
          (local.set $v (i32.add (local.get $v) (local.get $step)))
          (br_if $product (i32.lt_u (local.get $f) (local.get $end))))))
      (v128.store (local.get $out) (local.get $a))
      (v128.store offset=16 (local.get $out) (local.get $b))
      (v128.store offset=32 (local.get $out) (local.get $c))
      (v128.store offset=48 (local.get $out) (local.get $d))
      (local.set $out (i32.add (local.get $out) (i32.const 64)))
      (local.set $values (i32.add (local.get $values) (i32.const 64)))
      (br_if $eight (i32.lt_u (local.get $out) (local.get $stop)))))

  ;; out[j] = sum over m of filter[m] * values[j - m] for j = 0 ... length + reach - 2, eight j at a time as above: `values` has
  ;; `reach` numbers and zeros around them, eight or more on either side, and for each eight only the products that can differ
  ;; from zero are added.
  (func (export "convolve")
    (param $out i32) (param $filter i32) (param $length i32) (param $values i32) (param $reach i32)
    (local $j i32) (local $count i32) (local $m i32) (local $end i32) (local $f i32) (local $v i32)
    (local $s v128) (local $a v128) (local $b v128) (local $c v128) (local $d v128)
    (local.set $count (i32.sub (i32.add (local.get $length) (local.get $reach)) (i32.const 1)))
    (if (i32.le_s (local.get $count) (i32.const 0)) (then (return)))
    (local.set $out (i32.shl (local.get $out) (i32.const 3)))
    (local.set $filter (i32.shl (local.get $filter) (i32.const 3)))
    (local.set $values (i32.shl (local.get $values) (i32.const 3)))
    (loop $eight
      (local.set $a (v128.const f64x2 0 0))
      (local.set $b (v128.const f64x2 0 0))
      (local.set $c (v128.const f64x2 0 0))
      (local.set $d (v128.const f64x2 0 0))
      ;; The first m with j - m < reach for some of the eight, and the last with j - m >= 0 for some of them.
      (local.set $m (i32.sub (i32.add (local.get $j) (i32.const 1)) (local.get $reach)))
      (if (i32.lt_s (local.get $m) (i32.const 0)) (then (local.set $m (i32.const 0))))
      (local.set $end (i32.add (local.get $j) (i32.const 8)))
      (if (i32.gt_s (local.get $end) (local.get $length)) (then (local.set $end (local.get $length))))
      (if (i32.lt_s (local.get $m) (local.get $end)) (then
        (local.set $f (i32.add (local.get $filter) (i32.shl (local.get $m) (i32.const 3))))
        (local.set $v (i32.add (local.get $values)
          (i32.shl (i32.sub (local.get $j) (local.get $m)) (i32.const 3))))
        (local.set $end (i32.add (local.get $filter) (i32.shl (local.get $end) (i32.const 3))))
        (loop $product
          (local.set $s (v128.load64_splat (local.get $f)))
          (local.set $a (f64x2.add (local.get $a) (f64x2.mul (local.get $s) (v128.load (local.get $v)))))
          (local.set $b (f64x2.add (local.get $b) (f64x2.mul (local.get $s) (v128.load offset=16 (local.get $v)))))
          (local.set $c (f64x2.add (local.get $c) (f64x2.mul (local.get $s) (v128.load offset=32 (local.get $v)))))
          (local.set $d (f64x2.add (local.get $d) (f64x2.mul (local.get $s) (v128.load offset=48 (local.get $v)))))
          (local.set $f (i32.add (local.get $f) (i32.const 8)))
          (local.set $v (i32.sub (local.get $v) (i32.const 8)))
          (br_if $product (i32.lt_u (local.get $f) (local.get $end))))))
      (v128.store (local.get $out) (local.get $a))
      (v128.store offset=16 (local.get $out) (local.get $b))
      (v128.store offset=32 (local.get $out) (local.get $c))
      (v128.store offset=48 (local.get $out) (local.get $d))
      (local.set $out (i32.add (local.get $out) (i32.const 64)))
      (local.set $j (i32.add (local.get $j) (i32.const 8)))
      (br_if $eight (i32.lt_s (local.get $j) (local.get $count)))))

  ;; out[j] += sum over k of weights[k] * values[j - lags[k]] for j = 0 ... count - 1, eight j at a time as above; for each
  ;; eight only the lags, which rise, up to `reach` + 7 + j.
  (func $addLagged (export "addLagged")
    (param $out i32) (param $count i32) (param $weights i32) (param $lags i32) (param $length i32) (param $values i32)
    (param $reach i32)
    (local $stop i32) (local $end i32) (local $w i32) (local $l i32) (local $lag i32) (local $v i32)
    (local $s v128) (local $a v128) (local $b v128) (local $c v128) (local $d v128)
    (if (i32.le_s (local.get $count) (i32.const 0)) (then (return)))
    (local.set $out (i32.shl (local.get $out) (i32.const 3)))
    (local.set $weights (i32.shl (local.get $weights) (i32.const 3)))
    (local.set $lags (i32.shl (local.get $lags) (i32.const 2)))
    (local.set $values (i32.shl (local.get $values) (i32.const 3)))
    (local.set $reach (i32.add (local.get $reach) (i32.const 7)))
    (local.set $stop (i32.add (local.get $out) (i32.shl (local.get $count) (i32.const 3))))
    (local.set $end (i32.add (local.get $weights) (i32.shl (local.get $length) (i32.const 3))))
    (loop $eight
      (local.set $a (v128.load (local.get $out)))
      (local.set $b (v128.load offset=16 (local.get $out)))
      (local.set $c (v128.load offset=32 (local.get $out)))
      (local.set $d (v128.load offset=48 (local.get $out)))
      (local.set $w (local.get $weights))
      (local.set $l (local.get $lags))
      (block $done
        (loop $product
          (br_if $done (i32.ge_u (local.get $w) (local.get $end)))
          (local.set $lag (i32.load (local.get $l)))
          (br_if $done (i32.gt_s (local.get $lag) (local.get $reach)))
          (local.set $v (i32.sub (local.get $values) (i32.shl (local.get $lag) (i32.const 3))))
          (local.set $s (v128.load64_splat (local.get $w)))
          (local.set $a (f64x2.add (local.get $a) (f64x2.mul (local.get $s) (v128.load (local.get $v)))))
          (local.set $b (f64x2.add (local.get $b) (f64x2.mul (local.get $s) (v128.load offset=16 (local.get $v)))))
          (local.set $c (f64x2.add (local.get $c) (f64x2.mul (local.get $s) (v128.load offset=32 (local.get $v)))))
          (local.set $d (f64x2.add (local.get $d) (f64x2.mul (local.get $s) (v128.load offset=48 (local.get $v)))))
          (local.set $w (i32.add (local.get $w) (i32.const 8)))
          (local.set $l (i32.add (local.get $l) (i32.const 4)))
          (br $product)))
      (v128.store (local.get $out) (local.get $a))
      (v128.store offset=16 (local.get $out) (local.get $b))
      (v128.store offset=32 (local.get $out) (local.get $c))
      (v128.store offset=48 (local.get $out) (local.get $d))
      (local.set $out (i32.add (local.get $out) (i32.const 64)))
      (local.set $values (i32.add (local.get $values) (i32.const 64)))
      (local.set $reach (i32.add (local.get $reach) (i32.const 8)))
      (br_if $eight (i32.lt_u (local.get $out) (local.get $stop)))))

  ;; out[j] += scale * values[j] for j = 0 ... count - 1, and nothing else.
  (func $addScaled (export "addScaled") (param $out i32) (param $values i32) (param $count i32) (param $scale f64)
    (local $s v128) (local $stop i32) (local $pairs i32)
    (local.set $out (i32.shl (local.get $out) (i32.const 3)))
    (local.set $values (i32.shl (local.get $values) (i32.const 3)))
    (local.set $s (f64x2.splat (local.get $scale)))
    (local.set $stop (i32.add (local.get $out) (i32.shl (local.get $count) (i32.const 3))))
    (local.set $pairs (i32.sub (local.get $stop) (i32.const 15)))
    (block $paired
      (loop $pair
        (br_if $paired (i32.ge_s (local.get $out) (local.get $pairs)))
        (v128.store (local.get $out) (f64x2.add (v128.load (local.get $out))
          (f64x2.mul (local.get $s) (v128.load (local.get $values)))))
        (local.set $out (i32.add (local.get $out) (i32.const 16)))
        (local.set $values (i32.add (local.get $values) (i32.const 16)))
        (br $pair)))
    (if (i32.lt_s (local.get $out) (local.get $stop)) (then
      (f64.store (local.get $out) (f64.add (f64.load (local.get $out))
        (f64.mul (local.get $scale) (f64.load (local.get $values))))))))

  ;; out[j] = base[j] + scale * values[j] for j = 0 ... count - 1, eight j at a time as above.
  (func $combine (export "combine")
    (param $out i32) (param $base i32) (param $values i32) (param $count i32) (param $scale f64)
    (local $s v128) (local $stop i32)
    (if (i32.le_s (local.get $count) (i32.const 0)) (then (return)))
    (local.set $out (i32.shl (local.get $out) (i32.const 3)))
    (local.set $base (i32.shl (local.get $base) (i32.const 3)))
    (local.set $values (i32.shl (local.get $values) (i32.const 3)))
    (local.set $s (f64x2.splat (local.get $scale)))
    (local.set $stop (i32.add (local.get $out) (i32.shl (local.get $count) (i32.const 3))))
    (loop $eight
      (v128.store (local.get $out) (f64x2.add (v128.load (local.get $base))
        (f64x2.mul (local.get $s) (v128.load (local.get $values)))))
      (v128.store offset=16 (local.get $out) (f64x2.add (v128.load offset=16 (local.get $base))
        (f64x2.mul (local.get $s) (v128.load offset=16 (local.get $values)))))
      (v128.store offset=32 (local.get $out) (f64x2.add (v128.load offset=32 (local.get $base))
        (f64x2.mul (local.get $s) (v128.load offset=32 (local.get $values)))))
      (v128.store offset=48 (local.get $out) (f64x2.add (v128.load offset=48 (local.get $base))
        (f64x2.mul (local.get $s) (v128.load offset=48 (local.get $values)))))
      (local.set $out (i32.add (local.get $out) (i32.const 64)))
      (local.set $base (i32.add (local.get $base) (i32.const 64)))
      (local.set $values (i32.add (local.get $values) (i32.const 64)))
      (br_if $eight (i32.lt_u (local.get $out) (local.get $stop)))))

  ;; Where values[j] > best[j] + tie: best[j] = values[j] and choice[j] = action, for j = 0 ... count - 1, two j at a time.
  (func $offer (export "offer")
    (param $best i32) (param $choice i32) (param $values i32) (param $count i32) (param $action f64) (param $tie f64)
    (local $a v128) (local $t v128) (local $v v128) (local $b v128) (local $better v128) (local $stop i32)
    (if (i32.le_s (local.get $count) (i32.const 0)) (then (return)))
    (local.set $best (i32.shl (local.get $best) (i32.const 3)))
    (local.set $choice (i32.shl (local.get $choice) (i32.const 3)))
    (local.set $values (i32.shl (local.get $values) (i32.const 3)))
    (local.set $a (f64x2.splat (local.get $action)))
    (local.set $t (f64x2.splat (local.get $tie)))
    (local.set $stop (i32.add (local.get $best) (i32.shl (local.get $count) (i32.const 3))))
    (loop $pair
      (local.set $v (v128.load (local.get $values)))
      (local.set $b (v128.load (local.get $best)))
      (local.set $better (f64x2.gt (local.get $v) (f64x2.add (local.get $b) (local.get $t))))
      (v128.store (local.get $best) (v128.bitselect (local.get $v) (local.get $b) (local.get $better)))
      (v128.store (local.get $choice)
        (v128.bitselect (local.get $a) (v128.load (local.get $choice)) (local.get $better)))
      (local.set $best (i32.add (local.get $best) (i32.const 16)))
      (local.set $choice (i32.add (local.get $choice) (i32.const 16)))
      (local.set $values (i32.add (local.get $values) (i32.const 16)))
      (br_if $pair (i32.lt_u (local.get $best) (local.get $stop)))))

  ;; For j = 0 ... count - 1, two at a time: best[j] = 0 and choice[j] = action.
  (func (export "none") (param $best i32) (param $choice i32) (param $count i32) (param $action f64)
    (local $a v128) (local $stop i32)
    (local.set $best (i32.shl (local.get $best) (i32.const 3)))
    (local.set $choice (i32.shl (local.get $choice) (i32.const 3)))
    (local.set $a (f64x2.splat (local.get $action)))
    (local.set $stop (i32.add (local.get $best) (i32.shl (local.get $count) (i32.const 3))))
    (block $done
      (loop $pair
        (br_if $done (i32.ge_u (local.get $best) (local.get $stop)))
        (v128.store (local.get $best) (v128.const f64x2 0 0))
        (v128.store (local.get $choice) (local.get $a))
        (local.set $best (i32.add (local.get $best) (i32.const 16)))
        (local.set $choice (i32.add (local.get $choice) (i32.const 16)))
        (br $pair))))

  ;; Where values[j] > best[j] + tie: best[j] = values[j] and choice[j] = actions[j], for j = 0 ... count - 1, two j at a time.
  (func (export "offerEach")
    (param $best i32) (param $choice i32) (param $values i32) (param $actions i32) (param $count i32) (param $tie f64)
    (local $t v128) (local $v v128) (local $b v128) (local $better v128) (local $stop i32)
    (local.set $best (i32.shl (local.get $best) (i32.const 3)))
    (local.set $choice (i32.shl (local.get $choice) (i32.const 3)))
    (local.set $values (i32.shl (local.get $values) (i32.const 3)))
    (local.set $actions (i32.shl (local.get $actions) (i32.const 3)))
    (local.set $t (f64x2.splat (local.get $tie)))
    (local.set $stop (i32.add (local.get $best) (i32.shl (local.get $count) (i32.const 3))))
    (block $done
      (loop $pair
        (br_if $done (i32.ge_u (local.get $best) (local.get $stop)))
        (local.set $v (v128.load (local.get $values)))
        (local.set $b (v128.load (local.get $best)))
        (local.set $better (f64x2.gt (local.get $v) (f64x2.add (local.get $b) (local.get $t))))
        (v128.store (local.get $best) (v128.bitselect (local.get $v) (local.get $b) (local.get $better)))
        (v128.store (local.get $choice)
          (v128.bitselect (v128.load (local.get $actions)) (v128.load (local.get $choice)) (local.get $better)))
        (local.set $best (i32.add (local.get $best) (i32.const 16)))
        (local.set $choice (i32.add (local.get $choice) (i32.const 16)))
        (local.set $values (i32.add (local.get $values) (i32.const 16)))
        (local.set $actions (i32.add (local.get $actions) (i32.const 16)))
        (br $pair))))

  ;; Whole numbers of 2 bytes, their places counted so: short[out + j] = data[choice + j] for j = 0 ... count - 1.
  (func (export "shorten") (param $out i32) (param $choice i32) (param $count i32)
    (local $stop i32)
    (local.set $out (i32.shl (local.get $out) (i32.const 1)))
    (local.set $choice (i32.shl (local.get $choice) (i32.const 3)))
    (local.set $stop (i32.add (local.get $out) (i32.shl (local.get $count) (i32.const 1))))
    (block $done
      (loop $one
        (br_if $done (i32.ge_u (local.get $out) (local.get $stop)))
        (i32.store16 (local.get $out) (i32.trunc_f64_s (f64.load (local.get $choice))))
        (local.set $out (i32.add (local.get $out) (i32.const 2)))
        (local.set $choice (i32.add (local.get $choice) (i32.const 8)))
        (br $one))))

  ;; Whole numbers of 2 bytes, as above: short[out + width * k + j] = short[from + j] for j = 0 ... count - 1 and k = 0 ... rows - 1.
  (func (export "copyShorts") (param $out i32) (param $width i32) (param $rows i32) (param $from i32) (param $count i32)
    (local $o i32) (local $f i32) (local $stop i32)
    (local.set $out (i32.shl (local.get $out) (i32.const 1)))
    (local.set $width (i32.shl (local.get $width) (i32.const 1)))
    (local.set $from (i32.shl (local.get $from) (i32.const 1)))
    (local.set $count (i32.shl (local.get $count) (i32.const 1)))
    (block $done
      (loop $row
        (br_if $done (i32.le_s (local.get $rows) (i32.const 0)))
        (local.set $o (local.get $out))
        (local.set $f (local.get $from))
        (local.set $stop (i32.add (local.get $out) (local.get $count)))
        (block $copied
          (loop $one
            (br_if $copied (i32.ge_u (local.get $o) (local.get $stop)))
            (i32.store16 (local.get $o) (i32.load16_u (local.get $f)))
            (local.set $o (i32.add (local.get $o) (i32.const 2)))
            (local.set $f (i32.add (local.get $f) (i32.const 2)))
            (br $one)))
        (local.set $out (i32.add (local.get $out) (local.get $width)))
        (local.set $rows (i32.sub (local.get $rows) (i32.const 1)))
        (br $row))))

  ;; out[j - lags[k]] += weights[k] * values[j] for j = 0 ... count - 1 and every k, and nothing else.
  (func (export "scatter")
    (param $out i32) (param $values i32) (param $count i32) (param $weights i32) (param $lags i32) (param $length i32)
    (local $end i32)
    (local.set $end (i32.add (local.get $weights) (local.get $length)))
    (block $done
      (loop $point
        (br_if $done (i32.ge_s (local.get $weights) (local.get $end)))
        (call $addScaled
          (i32.sub (local.get $out) (i32.load (i32.shl (local.get $lags) (i32.const 2))))
          (local.get $values)
          (local.get $count)
          (f64.load (i32.shl (local.get $weights) (i32.const 3))))
        (local.set $weights (i32.add (local.get $weights) (i32.const 1)))
        (local.set $lags (i32.add (local.get $lags) (i32.const 1)))
        (br $point))))

  ;; For each of some rows, eight numbers: correlate by 1, and then addLagged `shift` further. Rows of `out` are `width` apart,
  ;; those of `values` `row`.
  (func (export "followRows")
    (param $out i32) (param $width i32) (param $filter i32) (param $length i32) (param $values i32) (param $row i32)
    (param $rows i32) (param $weights i32) (param $lags i32) (param $late i32) (param $shift i32) (param $reach i32)
    (block $done
      (loop $next
        (br_if $done (i32.le_s (local.get $rows) (i32.const 0)))
        (call $correlate (local.get $out) (i32.const 8) (local.get $filter) (local.get $length) (local.get $values)
          (i32.const 1))
        (call $addLagged (local.get $out) (i32.const 8) (local.get $weights) (local.get $lags) (local.get $late)
          (i32.add (local.get $values) (local.get $shift)) (local.get $reach))
        (local.set $out (i32.add (local.get $out) (local.get $width)))
        (local.set $values (i32.add (local.get $values) (local.get $row)))
        (local.set $rows (i32.sub (local.get $rows) (i32.const 1)))
        (br $next))))

  ;; For each of some rows, eight numbers: combine. Rows are as far apart as `width`, `baseRow` and `row` say.
  (func (export "combineRows")
    (param $out i32) (param $width i32) (param $base i32) (param $baseRow i32) (param $values i32) (param $row i32)
    (param $rows i32) (param $scale f64)
    (block $done
      (loop $next
        (br_if $done (i32.le_s (local.get $rows) (i32.const 0)))
        (call $combine (local.get $out) (local.get $base) (local.get $values) (i32.const 8) (local.get $scale))
        (local.set $out (i32.add (local.get $out) (local.get $width)))
        (local.set $base (i32.add (local.get $base) (local.get $baseRow)))
        (local.set $values (i32.add (local.get $values) (local.get $row)))
        (local.set $rows (i32.sub (local.get $rows) (i32.const 1)))
        (br $next))))

  ;; For each of some rows, eight numbers: offer, all choices in the same place.
  (func (export "offerRows")
    (param $best i32) (param $width i32) (param $choice i32) (param $values i32) (param $row i32) (param $rows i32)
    (param $tie f64)
    (block $done
      (loop $next
        (br_if $done (i32.le_s (local.get $rows) (i32.const 0)))
        (call $offer (local.get $best) (local.get $choice) (local.get $values) (i32.const 8) (f64.const 0) (local.get $tie))
        (local.set $best (i32.add (local.get $best) (local.get $width)))
        (local.set $values (i32.add (local.get $values) (local.get $row)))
        (local.set $rows (i32.sub (local.get $rows) (i32.const 1)))
        (br $next)))))
